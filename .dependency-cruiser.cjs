/**
 * The arrows between the rooms (DEVELOPERS.md draws them). `npm run rooms` holds them; `tests/rooms` plants a
 * violation of each and looks that it is caught, and holds the same arrows for `.astro` files, which this tool
 * cannot read.
 */

/** Libraries that compute and touch nothing: no file, no network, no clock, no randomness. */
const pureLibraries = [
  'zod',
  'big\\.js',
  'flatbush',
  'flatqueue',
  'intl-messageformat',
  'kdbush',
  'geokdbush',
  'papaparse',
  'point-in-polygon-hao',
  'robust-predicates',
  'proj4',
  'saxes',
  'temporal-polyfill',
  'zod-openapi',
];
/** What takes a packet apart, from bytes to data: `jose` and pdf.js can do more, so only the verifier may have them. */
const readers = ['@cantoo/pdf-lib', 'fflate', 'jose', 'pdfjs-dist'];
/** Writes calendars. Left to itself it asks the clock and makes ids up; `shared/calendar/` hands it both. */
const calendarWriters = ['ical-generator'];
const libraries = (names) => `node_modules/(@types/)?(${names.join('|')})/`;

/** Where a type stands at most; it is erased before anything runs. */
const notTypes = { dependencyTypesNot: ['type-only', 'type-import'] };

/** @type {import('dependency-cruiser').IConfiguration} */
module.exports = {
  forbidden: [
    {
      name: 'no-cycles',
      comment: 'A cycle cannot be read from one end. Move what both need into a file of its own.',
      severity: 'error',
      from: {},
      to: { circular: true },
    },
    {
      name: 'resolvable',
      comment: 'The import leads nowhere, or to a package that package.json does not name.',
      severity: 'error',
      from: {},
      to: { couldNotResolve: true, pathNot: '^(astro:|(\\.\\./)*(site/)?dist/)' },
    },
    {
      name: 'shared-imports-only-shared',
      comment: 'shared/ is the domain. It may import its own files and the pure libraries listed above.',
      severity: 'error',
      from: { path: '^shared/', pathNot: '^shared/(verify|calendar)/' },
      to: { pathNot: ['^shared/', libraries(pureLibraries)] },
    },
    {
      name: 'verifier-imports-readers',
      comment: 'shared/verify/ may also import what reads PDFs, archives and signatures from bytes.',
      severity: 'error',
      from: { path: '^shared/verify/' },
      to: { pathNot: ['^shared/', libraries([...pureLibraries, ...readers])] },
    },
    {
      name: 'calendar-imports-writer',
      comment: 'shared/calendar/ may also import what writes iCalendar files.',
      severity: 'error',
      from: { path: '^shared/calendar/' },
      to: { pathNot: ['^shared/', libraries([...pureLibraries, ...calendarWriters])] },
    },
    {
      name: 'functions-import-shared',
      comment:
        "Handlers and stores may import shared/ and the site's built bundle, nothing of the other rooms.",
      severity: 'error',
      from: { path: '^functions/' },
      to: { path: '^(infra|site|tests)/', pathNot: '^site/dist/' },
    },
    {
      name: 'only-stores-know-aws',
      comment: 'Keys and buckets are known to functions/stores/ alone; everything else asks a store.',
      severity: 'error',
      from: { path: '^(functions|infra|site|shared)/', pathNot: '^functions/stores/' },
      to: { path: 'node_modules/(@aws-sdk|@smithy)/' },
    },
    {
      name: 'infra-imports-entry-points',
      comment:
        'infra/ starts what stands in functions/ and names things with shared/. It reaches no page and no test.',
      severity: 'error',
      from: { path: '^infra/' },
      to: { path: '^(site|tests)/', pathNot: '^site/dist/' },
    },
    {
      name: 'aws-and-local-apart',
      comment:
        'The CDK app and the local runner are two ways to start the same handlers; neither is part of the other.',
      severity: 'error',
      from: { path: '^infra/(aws|local)/' },
      to: { path: '^infra/(aws|local)/', pathNot: '^infra/$1/' },
    },
    {
      name: 'cdk-imports-no-handler',
      comment: 'The CDK app names entry files by path for the bundler; importing one would run it at synth.',
      severity: 'error',
      from: { path: '^infra/aws/' },
      to: { path: '^functions/' },
    },
    {
      name: 'cdk-only-in-infra-aws',
      comment: 'Nothing that runs for a user needs the CDK.',
      severity: 'error',
      from: { path: '^(functions|infra/local|site|shared)/' },
      to: { path: 'node_modules/(aws-cdk-lib|constructs)/' },
    },
    {
      name: 'site-imports-shared',
      comment: 'Pages show what shared/ computes and reach data through the API or the snapshot.',
      severity: 'error',
      from: { path: '^site/' },
      to: { path: '^(functions|infra|tests)/' },
    },
    {
      name: 'site-runs-in-a-browser',
      comment: 'Only the build settings of the site run under Node.',
      severity: 'error',
      from: { path: '^site/src/' },
      to: { dependencyTypes: ['core'] },
    },
    {
      name: 'nothing-imports-tests',
      comment: 'A test is the end of an arrow.',
      severity: 'error',
      from: { pathNot: '^tests/' },
      to: { path: '^tests/' },
    },
    {
      name: 'shipped-code-needs-shipped-packages',
      comment: 'What runs for a user stands under dependencies in package.json.',
      severity: 'error',
      from: { path: '^(shared|functions|site/src)/' },
      to: { dependencyTypes: ['npm-dev'], ...notTypes, pathNot: 'node_modules/@types/' },
    },
  ],
  options: {
    doNotFollow: { path: 'node_modules' },
    // Only what is built here: most packages keep their code in a dist/ of their own.
    exclude: { path: '^(site/)?(dist|cdk\\.out|\\.astro|\\.data|out)/' },
    tsPreCompilationDeps: true,
    tsConfig: { fileName: 'tsconfig.json' },
    enhancedResolveOptions: {
      exportsFields: ['exports'],
      conditionNames: ['import', 'types', 'node', 'default'],
      extensions: ['.ts', '.tsx', '.js', '.mjs', '.cjs', '.d.ts', '.json'],
    },
    cache: false,
  },
};
