/** The package of Discord's published API description has no types; these are the schemas used here. */
declare module 'discord-api-spec/zod' {
  interface Schema {
    safeParse(value: unknown): {
      success: boolean;
      error?: { issues: { path: PropertyKey[]; message: string }[] };
    };
  }
  export const ApplicationCommandAutocompleteCallbackRequestSchema: Schema;
  export const ApplicationCommandUpdateRequestSchema: Schema;
  export const BasicMessageResponseSchema: Schema;
  export const CreateMessageInteractionCallbackRequestSchema: Schema;
  export const CreatePrivateChannelRequestSchema: Schema;
  export const IncomingWebhookInteractionRequestSchema: Schema;
  export const IncomingWebhookUpdateRequestPartialSchema: Schema;
  export const InteractionCallbackResponseSchema: Schema;
  export const MessageCreateRequestSchema: Schema;
  export const MessageEditRequestPartialSchema: Schema;
  export const ModalInteractionCallbackRequestSchema: Schema;
  export const PrivateChannelResponseSchema: Schema;
  export const UpdateMessageInteractionCallbackRequestSchema: Schema;
}
