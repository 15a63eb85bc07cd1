// The order of the contexts, from the one that knows nobody upwards. A context may use itself,
// the contexts listed for it, and nothing else; always through the other's index.
const PURE = ['measure', 'dentition', 'labels'];
const MAY_USE = {
  measure: [],
  dentition: [],
  labels: [],
  platform: ['measure'],
  access: [...PURE, 'platform'],
  catalogue: [...PURE, 'platform', 'access'],
  stock: [...PURE, 'platform', 'access', 'catalogue'],
  procedures: [...PURE, 'platform', 'access', 'catalogue'],
  visits: [...PURE, 'platform', 'access', 'catalogue', 'stock', 'procedures'],
  costing: [...PURE, 'platform', 'access', 'catalogue', 'stock', 'procedures', 'visits'],
  pricing: [...PURE, 'platform', 'access', 'catalogue', 'stock', 'procedures', 'visits', 'costing'],
  purchasing: [...PURE, 'platform', 'access', 'catalogue', 'stock', 'procedures', 'visits'],
  tracing: [...PURE, 'platform', 'access', 'catalogue', 'stock', 'procedures', 'visits'],
  // What it brings in and takes out is written by whose it is, ordering included.
  exchange: [
    ...[...PURE, 'platform', 'access', 'catalogue', 'stock', 'procedures', 'visits'],
    'purchasing',
  ],
};

const contextOrder = Object.entries(MAY_USE).map(([context, allowed]) => ({
  name: `context-order-${context}`,
  severity: 'error',
  from: { path: `(^|/)libs/${context}/` },
  to: { path: '(^|/)libs/', pathNot: [context, ...allowed].map((c) => `(^|/)libs/${c}/`) },
}));

module.exports = {
  forbidden: [
    ...contextOrder,
    {
      name: 'context-front-door',
      severity: 'error',
      from: { path: '(^|/)libs/([^/]+)/' },
      to: { path: '(^|/)libs/[^/]+/', pathNot: ['(^|/)libs/$2/', '/src/index\\.ts$'] },
    },
    {
      name: 'app-front-door',
      severity: 'error',
      from: { path: '(^|/)apps/' },
      to: { path: '(^|/)libs/', pathNot: '/src/index\\.ts$' },
    },
    {
      name: 'pure-knows-nobody',
      severity: 'error',
      from: { path: '(^|/)libs/(measure|dentition|labels)/', pathNot: '\\.spec\\.ts$' },
      to: { pathNot: '(^|/)libs/$2/' },
    },
    {
      name: 'domain-is-pure',
      severity: 'error',
      from: { path: '(^|/)libs/([^/]+)/src/domain/', pathNot: '\\.spec\\.ts$' },
      to: { pathNot: ['(^|/)libs/$2/src/domain/', '(^|/)libs/[^/]+/src/index\\.ts$'] },
    },
    {
      name: 'web-stays-light',
      severity: 'error',
      from: { path: '(^|/)apps/web/' },
      to: { path: '(^|/)libs/', pathNot: '(^|/)libs/(measure|dentition|labels)/' },
    },
    {
      name: 'no-circular',
      severity: 'error',
      from: { pathNot: '\\.entity\\.ts$' },
      to: { circular: true },
    },
    {
      name: 'not-to-unresolvable',
      severity: 'error',
      from: {},
      // Vite makes the address of a file from '…?url'; nobody else knows the ending.
      to: { couldNotResolve: true, pathNot: '\\?url$' },
    },
    {
      name: 'not-to-spec',
      severity: 'error',
      from: { pathNot: '\\.spec\\.ts$' },
      to: { path: '\\.spec\\.ts$' },
    },
    {
      name: 'not-to-dev-dep',
      severity: 'error',
      from: { path: '(^|/)(apps/(api|cli)|libs)/', pathNot: '\\.spec\\.ts$' },
      to: { dependencyTypes: ['npm-dev'], dependencyTypesNot: ['npm', 'type-only'] },
    },
  ],
  options: {
    tsPreCompilationDeps: true,
    tsConfig: { fileName: 'tsconfig.json' },
    exclude: { path: 'test/architecture/fixtures' },
    doNotFollow: { path: 'node_modules' },
    enhancedResolveOptions: {
      conditionNames: ['source', 'import', 'require', 'node', 'default'],
      exportsFields: ['exports'],
    },
  },
};
