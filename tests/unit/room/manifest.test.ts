import { readFileSync } from 'node:fs';
import { expect, it } from 'vitest';

const looks = (name: string) =>
  readFileSync(new URL(`../../../src/room/page/looks/${name}`, import.meta.url), 'utf8');

it('a phone’s start screen has the page’s own ground', () => {
  const [, ground] = /--ground: var\(--light, (#\w+)\)/.exec(looks('room.css')) ?? [];
  expect(JSON.parse(looks('room.webmanifest'))).toMatchObject({
    background_color: ground,
    theme_color: ground,
  });
});
