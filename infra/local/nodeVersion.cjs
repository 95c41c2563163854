// Plain JavaScript that any Node can read: `npm` runs it before every command, because an old Node would answer a
// TypeScript file with a page of syntax error. One line says what to do instead.
const needed = 24;
const have = process.versions.node;

if (Number(have.split('.')[0]) < needed) {
  const remedy =
    process.platform === 'linux' && (process.arch === 'x64' || process.arch === 'arm64')
      ? 'run `npm ci` without omitting optional packages, which brings Node 24'
      : 'install Node 24 from nodejs.org';
  console.error(`Node ${needed} or newer is needed and this is Node ${have}: ${remedy}.`);
  process.exit(1);
}
if (!process.features.typescript) {
  console.error(
    `This Node ${have} does not run TypeScript files: remove --no-strip-types (or its older names) from NODE_OPTIONS.`,
  );
  process.exit(1);
}
