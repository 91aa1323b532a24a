// Exits with 0 when the bot says that it is well: for a container's health check, where there may be no curl.
const { MONITOR_PORT = '8018', MONITOR_TOKEN } = process.env;
try {
  const headers = MONITOR_TOKEN ? { authorization: `Bearer ${MONITOR_TOKEN}` } : {};
  const response = await fetch(`http://127.0.0.1:${MONITOR_PORT || '8018'}/healthz`, { headers });
  console.log((await response.text()).trim());
  process.exitCode = response.ok ? 0 : 1;
} catch (error) {
  console.log(String(error));
  process.exitCode = 1;
}
