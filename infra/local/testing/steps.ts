import type { Phase } from './step.ts';

/**
 * Everything that holds this repository. The site is built first, because types, the CDK app and the tests read what
 * the build leaves. Two lanes, because the smallest machine this runs on has two cores; the browser runs alone, so
 * that nothing slows a page while it is looked at.
 */
export const phases: readonly Phase[] = [
  [
    [{ name: 'site build', command: ['node', 'infra/local/commands/build.ts'], limitS: 300 }],
    [
      { name: 'rooms', command: ['depcruise', 'shared', 'functions', 'infra', 'site', 'tests'], limitS: 120 },
      { name: 'format', command: ['prettier', '--check', '--log-level', 'warn', '.'], limitS: 180 },
      { name: 'audit', command: ['node', 'infra/local/commands/audit.ts'], limitS: 120, maySkip: true },
    ],
  ],
  [
    [
      { name: 'types', command: ['tsc', '-p', '.'], limitS: 300 },
      { name: 'page types', command: ['astro', 'check', '--root', 'site'], limitS: 300 },
    ],
    [
      {
        name: 'lint',
        // The rules that know types hold the whole program: more than Node's own limit of about 4 GB.
        command: [
          'node',
          '--max-old-space-size=6144',
          'node_modules/eslint/bin/eslint.js',
          '.',
          '--max-warnings',
          '0',
        ],
        limitS: 600,
      },
      {
        name: 'cdk synth',
        command: ['cdk', 'synth', '--quiet', '-c', 'settings=infra/aws/settings.example.json'],
        limitS: 600,
      },
    ],
  ],
  [
    [
      {
        name: 'tests',
        command: ['vitest', 'run', '--exclude', 'tests/browser/**'],
        limitS: 1500,
        vitest: true,
      },
    ],
  ],
  [
    [
      {
        name: 'browser',
        command: ['vitest', 'run', 'tests/browser'],
        limitS: 1800,
        vitest: true,
        secondTry: true,
      },
    ],
  ],
];
