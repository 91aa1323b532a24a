import {
  ApplicationCommandAutocompleteCallbackRequestSchema,
  ApplicationCommandUpdateRequestSchema,
  CreateMessageInteractionCallbackRequestSchema,
  CreatePrivateChannelRequestSchema,
  IncomingWebhookInteractionRequestSchema,
  IncomingWebhookUpdateRequestPartialSchema,
  MessageCreateRequestSchema,
  MessageEditRequestPartialSchema,
  ModalInteractionCallbackRequestSchema,
  UpdateMessageInteractionCallbackRequestSchema,
  type Schema,
} from 'discord-api-spec/zod';
import { InteractionResponseType as Callback } from 'discord.js';
import { type Fields, type SentFile, fields, isFields, list } from './discordBody.ts';
import { commandProblems } from './discordCommandRules.ts';
import { messageProblems } from './discordMessageRules.ts';
import { modalProblems } from './discordModalRules.ts';

export type BodyKind =
  'commands' | 'callback' | 'followUp' | 'followUpEdit' | 'message' | 'messageEdit' | 'dm';

/** Violations in a body that the bot sent: of the published schemas, then of the rules that these leave out. */
export const bodyProblems = (kind: BodyKind, sent: unknown, files: SentFile[]): string[] => {
  const body: unknown = JSON.parse(JSON.stringify(sent ?? null));
  if (kind === 'commands') return commandsProblems(body);
  if (!isFields(body)) return ['the body is no object'];
  switch (kind) {
    case 'callback':
      return callbackProblems(body, files);
    case 'followUp':
      return [
        ...against(IncomingWebhookInteractionRequestSchema, body),
        ...messageProblems(body, files, false),
      ];
    case 'followUpEdit':
      return [
        ...against(IncomingWebhookUpdateRequestPartialSchema, body),
        ...messageProblems(body, files, true),
      ];
    case 'message':
      return [...against(MessageCreateRequestSchema, body), ...messageProblems(body, files, false)];
    case 'messageEdit':
      return [...against(MessageEditRequestPartialSchema, body), ...messageProblems(body, files, true)];
    case 'dm':
      return against(CreatePrivateChannelRequestSchema, body);
  }
};

const commandsProblems = (body: unknown): string[] =>
  Array.isArray(body)
    ? [
        ...body.flatMap((command) => against(ApplicationCommandUpdateRequestSchema, command)),
        ...commandProblems(list(body)),
      ]
    : ['the body is no list of commands'];

const callbackProblems = (body: Fields, files: SentFile[]): string[] => {
  const data = fields(body['data']);
  switch (body['type']) {
    case Callback.ChannelMessageWithSource:
      return [
        ...against(CreateMessageInteractionCallbackRequestSchema, body),
        ...messageProblems(data, files, false),
      ];
    case Callback.DeferredChannelMessageWithSource:
      return against(CreateMessageInteractionCallbackRequestSchema, body);
    case Callback.UpdateMessage:
      return [
        ...against(UpdateMessageInteractionCallbackRequestSchema, body),
        ...messageProblems(data, files, true),
      ];
    case Callback.DeferredMessageUpdate:
      return against(UpdateMessageInteractionCallbackRequestSchema, body);
    case Callback.ApplicationCommandAutocompleteResult:
      return against(ApplicationCommandAutocompleteCallbackRequestSchema, body);
    case Callback.Modal:
      return [...against(ModalInteractionCallbackRequestSchema, body), ...modalProblems(data)];
    default:
      return [`callback type ${String(body['type'])} is not one that answers an interaction`];
  }
};

const against = (schema: Schema, body: unknown): string[] =>
  (schema.safeParse(body).error?.issues ?? []).map(
    (issue) => `${issue.path.map(String).join('.') || 'body'}: ${issue.message}`,
  );
