type Child = Node | string | undefined | false;
type Props = Record<string, string | number | boolean | undefined | ((event: Event) => void)>;

const apply = (element: Element, props: Props, children: Child[]) => {
  for (const [name, value] of Object.entries(props)) {
    if (value === undefined || value === false) continue;
    if (typeof value === 'function') element.addEventListener(name, value);
    else element.setAttribute(name, value === true ? '' : String(value));
  }
  for (const child of children) if (child !== undefined && child !== false) element.append(child);
};

/** Creates an element with attributes, listeners and children. Strings become text nodes, never markup. */
export const h = <K extends keyof HTMLElementTagNameMap>(
  tag: K,
  props: Props = {},
  ...children: Child[]
): HTMLElementTagNameMap[K] => {
  const element = document.createElement(tag);
  apply(element, props, children);
  return element;
};

export const svg = (tag: string, props: Props = {}, ...children: Child[]): SVGElement => {
  const element = document.createElementNS('http://www.w3.org/2000/svg', tag);
  apply(element, props, children);
  return element;
};

export const button = (label: Child, press: (event: Event) => void, props: Props = {}): HTMLButtonElement =>
  h('button', { type: 'button', click: press, ...props }, label);

/** localStorage, for small things. The page also works without it. */
export const remember = {
  get(name: string): string | undefined {
    try {
      return localStorage.getItem(name) ?? undefined;
    } catch {
      return undefined;
    }
  },
  names(prefix: string): string[] {
    try {
      return Object.keys(localStorage).filter((name) => name.startsWith(prefix));
    } catch {
      return [];
    }
  },
  set(name: string, value: string | undefined): void {
    try {
      if (value === undefined) localStorage.removeItem(name);
      else localStorage.setItem(name, value);
    } catch {
      // A private window may refuse storage.
    }
  },
};
