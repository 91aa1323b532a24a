import Database from 'better-sqlite3';
import { Client, Events, type Interaction } from 'discord.js';
import pg from 'pg';

/**
 * A minimal bot on the same client, as the baseline: it answers every command with one fixed sentence, after one
 * durable insert if `BARE_DATABASE` names a file, or a PostgreSQL database.
 */
const file = process.env['BARE_DATABASE'];
type Insert = (id: string, typed: string) => unknown;

const openFile = (path: string): Insert => {
  const db = new Database(path);
  db.pragma('journal_mode = WAL');
  db.pragma('synchronous = FULL');
  db.exec('CREATE TABLE IF NOT EXISTS used (id TEXT PRIMARY KEY, typed TEXT NOT NULL) STRICT');
  const statement = db.prepare('INSERT INTO used (id, typed) VALUES (?, ?)');
  return (id, typed) => statement.run(id, typed);
};

const openServer = async (address: string): Promise<Insert> => {
  const pool = new pg.Pool({ connectionString: address, max: 10 });
  await pool.query('create table if not exists used (id text primary key, typed text not null)');
  const text = 'insert into used (id, typed) values ($1, $2)';
  return (id, typed) => pool.query({ name: 'insert', text, values: [id, typed] });
};

const open = async (): Promise<Insert | undefined> => {
  if (file === undefined) return undefined;
  return file.startsWith('postgres') ? openServer(file) : openFile(file);
};
const insert = await open();

const client = new Client({ intents: [], rest: { api: process.env['DISCORD_API'] ?? '' } });
const answer = async (interaction: Interaction): Promise<void> => {
  if (!interaction.isChatInputCommand()) return;
  const inserted = insert?.(interaction.id, JSON.stringify(interaction.options.data));
  if (inserted instanceof Promise) await inserted;
  await interaction.reply({ content: 'Noted.', allowedMentions: { parse: [] } });
};
client.on(Events.InteractionCreate, (interaction) => void answer(interaction).catch(() => undefined));
await client.login(process.env['DISCORD_TOKEN']);
