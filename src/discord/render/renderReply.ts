import {
  ButtonStyle,
  ComponentType,
  type APIActionRowComponent,
  type APIButtonComponentWithCustomId,
  type APIComponentInMessageActionRow,
  type RawFile,
} from 'discord.js';
import { definedOnly } from '../../definedOnly.ts';
import type { Action, Reply } from '../../contract/contract.ts';
import { moreAction } from '../../contract/kinds/longList.ts';
import { rowActions } from '../../contract/rowActions.ts';
import { discordWords } from '../../words/platform/discordWords.ts';
import { forLog } from '../failure.ts';
import { clipped, plainMarkdown } from './markdown.ts';
import type { DiscordPorts } from '../ports.ts';
import { type Place, pressId } from './pressId.ts';
import { bareText, replyText } from './replyText.ts';

type Row = APIActionRowComponent<APIComponentInMessageActionRow>;

/** A reply as a Discord message. */
export interface Rendered {
  content: string;
  /** What did not fit, for further messages. */
  rest: string[];
  components: Row[];
  attachments: { id: string; filename: string; description?: string }[];
  files: RawFile[];
}

const BUTTONS = 5;
const MENU_ROWS = 25;
const UPLOAD = 10 * 1024 * 1024;

export const renderReply = async (reply: Reply, place: Place, ports: DiscordPorts): Promise<Rendered> => {
  const { files, attachments, notes } = await enclosures(reply, ports);
  const { content, rest, shown } = replyText(reply, notes);
  return { content, rest, components: rowsOf(reply, shown, place, ports), attachments, files };
};

export const textAlone = (content: string): Rendered => ({
  content,
  rest: [],
  components: [],
  attachments: [],
  files: [],
});

export const bareReply = (reply: Reply): Rendered => textAlone(bareText(reply));

const enclosures = async (reply: Reply, { draw, log }: DiscordPorts) => {
  const files: RawFile[] = [];
  const attachments: Rendered['attachments'] = [];
  const notes: string[] = [];
  const enclose = (name: string, contentType: string, data: Buffer, description?: string): void => {
    if (data.length > UPLOAD) return void notes.push(discordWords.fileTooLarge);
    const id = String(files.length);
    files.push({ name, contentType, data });
    attachments.push({ id, filename: name, ...definedOnly({ description }) });
  };
  if (reply.chart) {
    try {
      enclose('chart.png', 'image/png', Buffer.from(await draw(reply.chart)), clipped(reply.chart.alt, 1024));
    } catch (error) {
      log.error(forLog(error), 'could not draw a chart');
      notes.push(discordWords.noPicture);
    }
  }
  if (reply.file) enclose(reply.file.name, reply.file.type, Buffer.from(reply.file.content));
  return { files, attachments, notes };
};

const rowsOf = (reply: Reply, shown: number, place: Place, ports: DiscordPorts): Row[] => {
  const more = moreAction(reply, shown);
  const most = (reply.kind === 'choice' ? MENU_ROWS : BUTTONS) - more.length;
  const offered = withIds([...(reply.actions ?? []).slice(0, most), ...more], place, ports);
  const rows = rowActions(reply, reply.more ? shown : undefined).slice(0, MENU_ROWS);
  const ofRows = withIds(rows, place, ports);
  return [
    ...(ofRows.length > 0 ? [menu(ofRows)] : []),
    ...(offered.length > BUTTONS
      ? [menu(offered)]
      : offered.length > 0
        ? [buttons(offered, reply.kind)]
        : []),
  ];
};

const withIds = (actions: Action[], place: Place, ports: DiscordPorts): Offered[] => {
  const ids = actions.map(({ press, line }) => pressId(press, line, place, ports));
  return actions
    .map((action, i) => ({ ...action, id: ids[i] ?? '' }))
    .filter(({ id }, i) => ids.indexOf(id) === i);
};

type Offered = Action & { id: string };

const buttons = (actions: Offered[], kind: Reply['kind']): Row => ({
  type: ComponentType.ActionRow,
  components: actions.map(({ label, id }, i): APIButtonComponentWithCustomId => ({
    type: ComponentType.Button,
    // The most likely action comes first, in the primary style.
    style: i === 0 && kind === 'answer' ? ButtonStyle.Primary : ButtonStyle.Secondary,
    label: plainMarkdown(label, 80),
    custom_id: id,
  })),
});

const menu = (actions: Offered[]): Row => ({
  type: ComponentType.ActionRow,
  components: [
    {
      type: ComponentType.StringSelect,
      custom_id: 'pick',
      placeholder: discordWords.pick,
      options: actions.map(({ label, id }) => ({ label: plainMarkdown(label, 100), value: id })),
    },
  ],
});
