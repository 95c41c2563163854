/**
 * How a handler becomes one file. The CDK app and the bench read the same settings, so that what is measured is what is
 * deployed. The AWS SDK is bundled too: its version is then the one in package-lock.json and not the runtime's of the day.
 */
export const handlerBundle = {
  target: 'node24',
  format: 'esm',
  minify: true,
  sourceMap: true,
  sourcesContent: false,
  mainFields: ['module', 'main'],
  // Some packages are CommonJS inside and call `require`, which an ES module does not have.
  banner: "import{createRequire as __cr}from'node:module';const require=__cr(import.meta.url);",
} as const;
