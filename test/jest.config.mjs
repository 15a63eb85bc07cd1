// Nest 12 is ESM only; Jest on Node 20 cannot require() two ESM packages from CommonJS, so those
// two are compiled to CommonJS on the way in. Node 24 needs no such entry but is not hurt by it.
const toCommonJs = [
  '@swc/jest',
  { swcrc: false, module: { type: 'commonjs' }, jsc: { target: 'es2022' } },
];

export default {
  rootDir: '..',
  testMatch: ['<rootDir>/{apps,libs,test}/**/*.spec.ts'],
  modulePathIgnorePatterns: ['<rootDir>/dist', '<rootDir>/.traybook'],
  transform: {
    '/node_modules/(content-disposition|cookie)/': toCommonJs,
    '^.+\\.ts$': '@swc/jest',
  },
  transformIgnorePatterns: ['/node_modules/(?!(content-disposition|cookie)/)'],
  extensionsToTreatAsEsm: ['.ts'],
  moduleNameMapper: { '^(\\.{1,2}/.*)\\.js$': '$1' },
  testEnvironmentOptions: { customExportConditions: ['source', 'node', 'node-addons'] },
  globalSetup: '<rootDir>/test/harness/global-setup.mjs',
  globalTeardown: '<rootDir>/test/harness/global-teardown.mjs',
  // Browsers on a busy machine need their time; what hangs is still ended.
  testTimeout: 180_000,
  maxWorkers: 2,
  // Modules of every file stay in a worker's memory; a fresh one starts before that gets too much.
  workerIdleMemoryLimit: '900MB',
};
