import { connect } from 'node:net';

/**
 * Sends one address far more than its limit: `flood.js <port> <requests a second> <seconds>`, over a hundred kept-alive
 * connections. Prints how often each status came back.
 */
const [port = 0, perSecond = 0, seconds = 0] = process.argv.slice(2).map(Number);
const CONNECTIONS = 100;
const TICK = 5;

const statuses: Record<string, number> = {};
let sent = 0;
let cut = 0;
const host = `127.0.0.1:${port}`;
const request = `GET /api/start HTTP/1.1\r\nhost: ${host}\r\ncookie: room=${'x'.repeat(43)}\r\naccept: */*\r\n\r\n`;

const open = () => {
  const socket = connect(port, '127.0.0.1');
  socket.setNoDelay(true);
  let rest = '';
  socket.on('data', (data) => {
    const lines = `${rest}${data.toString('latin1')}`.split('\r\n');
    rest = lines.pop() ?? '';
    for (const line of lines) {
      // A body does not end with a line break, so the next status follows it directly.
      const [, status] = /HTTP\/1\.1 (\d{3}) /.exec(line) ?? [];
      if (status !== undefined) statuses[status] = (statuses[status] ?? 0) + 1;
    }
  });
  socket.on('error', () => undefined);
  return socket;
};

const sockets = Array.from({ length: CONNECTIONS }, open);
const began = performance.now();
let turn = 0;
const ticking = setInterval(() => {
  const due = Math.floor(((performance.now() - began) / 1000) * perSecond);
  for (; sent < Math.min(due, perSecond * seconds); sent += 1) {
    turn = (turn + 1) % CONNECTIONS;
    let socket = sockets[turn];
    if (!socket || socket.destroyed || !socket.writable) {
      cut += 1;
      socket = sockets[turn] = open();
    }
    socket.write(request);
  }
  if (sent < perSecond * seconds) return;
  clearInterval(ticking);
  setTimeout(() => {
    const took = (performance.now() - began) / 1000;
    console.log(JSON.stringify({ sent, took, cut, statuses }));
    process.exit();
  }, 1_000);
}, TICK);
