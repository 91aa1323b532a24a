/** What whoever watches over the program reads: on `/healthz`, and beside each number on `/metrics`. */
export const monitorWords = {
  names: {
    commands: 'glaze_room_commands_total',
    took: 'glaze_room_command_seconds',
    waited: 'glaze_room_store_wait_seconds',
    reminders: 'glaze_room_reminders_total',
    refused: 'glaze_room_refused_requests_total',
    logged: 'glaze_room_log_lines_total',
    discord: 'glaze_room_discord_connected',
    phones: 'glaze_room_phones_listening',
    resident: 'process_resident_memory_bytes',
    heap: 'nodejs_heap_size_used_bytes',
    delay: 'nodejs_eventloop_delay_max_seconds',
    worked: 'process_cpu_seconds_total',
    up: 'glaze_room_up_seconds',
  },
  commands: 'Commands, by their name, the kind of their reply, and the platform.',
  took: 'How long a command took, from request to reply, in seconds.',
  waited: 'How long reading and writing waited for their turn at the logbook, in seconds.',
  reminders: 'Reminders: told in time, told late, tried again, or dropped.',
  refused: 'Requests to the room that were refused, by HTTP status.',
  logged: 'Lines of the log, by their level.',
  discord: 'Whether the gateway of Discord is connected: 1 or 0.',
  phones: 'Phones that listen to the room now.',
  resident: 'Memory in use, in bytes.',
  heap: 'Memory in use by JavaScript objects, in bytes.',
  delay: 'The longest delay of the event loop since the last look, in seconds.',
  worked: 'CPU time used, in seconds.',
  up: 'How long the program has been running, in seconds.',

  at: (url: string) => `health and metrics at ${url}/healthz and ${url}/metrics`,
  troubled: 'Health and metrics could not be offered. I will keep trying.',
  inUse: (port: number) => `MONITOR_PORT ${port} is in use; choose another, or MONITOR_PORT=off`,
  needsToken:
    'others can reach this address, so set MONITOR_TOKEN too, such as to the output of: openssl rand -hex 32',
  weakToken:
    'too easy to guess: it needs at least 32 random characters, such as the output of: openssl rand -hex 32',
  refused401: 'Send the token: Authorization: Bearer …',
  notFound: 'There are /healthz and /metrics.',

  wrong: {
    store: 'The logbook does not answer.',
    discord: 'Discord is not connected; the log says why.',
    room: 'The room is not open; the log says why.',
    reminders: 'No reminders go out; the log says why.',
  },
};
