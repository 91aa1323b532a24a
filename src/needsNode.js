// What every program loads first. In plain JavaScript: a Node that is too old for the rest must still be able to say so.
const [major, minor] = process.versions.node.split('.').map(Number);
if (major < 22 || (major === 22 && minor < 18)) {
  console.error(
    `This needs Node.js 22.18 or later, and this is ${process.versions.node}: start it by npm, which uses the one that npm ci may have brought along, or install one from https://nodejs.org and run npm ci again.`,
  );
  process.exit(2);
}
