import Database from 'better-sqlite3';
import { Client, Events } from 'discord.js';

/**
 * A minimal bot on the same client, as the baseline: it answers every command with one fixed sentence, after one
 * durable insert if `BARE_DATABASE` names a file.
 */
const file = process.env['BARE_DATABASE'];
const insert = file === undefined ? undefined : openInsert(file);

const client = new Client({ intents: [], rest: { api: process.env['DISCORD_API'] ?? '' } });
client.on(Events.InteractionCreate, (interaction) => {
  if (!interaction.isChatInputCommand()) return;
  insert?.(interaction.id, JSON.stringify(interaction.options.data));
  void interaction.reply({ content: 'Noted.', allowedMentions: { parse: [] } }).catch(() => undefined);
});
await client.login(process.env['DISCORD_TOKEN']);

function openInsert(path: string): (id: string, typed: string) => void {
  const db = new Database(path);
  db.pragma('journal_mode = WAL');
  db.pragma('synchronous = FULL');
  db.exec('CREATE TABLE IF NOT EXISTS used (id TEXT PRIMARY KEY, typed TEXT NOT NULL) STRICT');
  const statement = db.prepare('INSERT INTO used (id, typed) VALUES (?, ?)');
  return (id, typed) => void statement.run(id, typed);
}
