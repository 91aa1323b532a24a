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

/** Buttons of which one at most is pressed. `choose` returns false when a press leaves none. */
export const choiceGroup = <T extends string>(
  all: readonly { name: string; value: T }[],
  given: string | undefined,
  choose: (value: T) => boolean | void,
  { each = 'choice', ...props }: Props & { each?: string },
): HTMLElement => {
  const group = h('div', { class: 'choices', role: 'group', ...props });
  const press = (event: Event, value: T) => {
    const isChosen = choose(value) !== false;
    for (const one of group.children)
      one.setAttribute('aria-pressed', String(isChosen && one === event.currentTarget));
  };
  for (const { name, value } of all)
    group.append(
      button(name, (event) => press(event, value), { class: each, 'aria-pressed': String(value === given) }),
    );
  return group;
};

/** Undefined where a browser refuses storage, as some private windows do. */
const tried = <T>(work: () => T): T | undefined => {
  try {
    return work();
  } catch {
    return undefined;
  }
};

/** localStorage, for small things. The page also works without it. */
export const remember = {
  get: (name: string): string | undefined => tried(() => localStorage.getItem(name)) ?? undefined,
  names: (prefix: string): string[] =>
    tried(() => Object.keys(localStorage).filter((name) => name.startsWith(prefix))) ?? [],
  set(name: string, value: string | undefined): void {
    tried(() => (value === undefined ? localStorage.removeItem(name) : localStorage.setItem(name, value)));
  },
};
