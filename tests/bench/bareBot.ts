import Database from 'better-sqlite3';
import { Client, Events, type ChatInputCommandInteraction } from 'discord.js';
import pg from 'pg';
import { isAddress } from '../../src/store/engine/isAddress.ts';

/**
 * A minimal bot on the same client, as the baseline: it answers every command with one fixed sentence, after one
 * durable insert if `BARE_DATABASE` names a file or a PostgreSQL database.
 */
const where = process.env['BARE_DATABASE'];
const insert = where === undefined ? undefined : isAddress(where) ? await inDatabase(where) : inFile(where);

const answer = async (interaction: ChatInputCommandInteraction) => {
  await insert?.(interaction.id, JSON.stringify(interaction.options.data));
  await interaction.reply({ content: 'Noted.', allowedMentions: { parse: [] } });
};
const client = new Client({ intents: [], rest: { api: process.env['DISCORD_API'] ?? '' } });
client.on(Events.InteractionCreate, (interaction) => {
  if (interaction.isChatInputCommand()) void answer(interaction).catch(() => undefined);
});
await client.login(process.env['DISCORD_TOKEN']);

type Insert = (id: string, typed: string) => Promise<unknown> | void;

function inFile(path: string): Insert {
  const db = new Database(path);
  db.pragma('journal_mode = WAL');
  db.pragma('synchronous = FULL');
  db.exec('CREATE TABLE IF NOT EXISTS used (id TEXT PRIMARY KEY, typed TEXT NOT NULL) STRICT');
  const statement = db.prepare('INSERT INTO used (id, typed) VALUES (?, ?)');
  return (id, typed) => void statement.run(id, typed);
}

async function inDatabase(address: string): Promise<Insert> {
  const pool = new pg.Pool({ connectionString: address, max: 10 });
  await pool.query('CREATE TABLE IF NOT EXISTS used (id TEXT PRIMARY KEY, typed TEXT NOT NULL)');
  const text = 'INSERT INTO used (id, typed) VALUES ($1, $2)';
  return (id, typed) => pool.query({ name: 'insert', text, values: [id, typed] });
}
