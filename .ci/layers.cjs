// Who may import whom inside src, lowest first.
const below = {
  base: [],
  earth: ['base'],
  wind: ['base'],
  ident: ['base'],
  speech: ['base'],
  station: ['base', 'earth'],
  panel: ['base', 'earth', 'station'],
  leg: ['base', 'earth', 'station', 'wind'],
  track: ['base', 'earth', 'station', 'wind', 'panel', 'leg'],
  rehearsal: ['base', 'earth', 'station', 'wind', 'panel', 'leg'],
  procedure: ['base', 'speech', 'ident', 'wind', 'station', 'leg', 'track'],
  flight: ['base', 'earth', 'wind', 'station', 'leg', 'track', 'procedure', 'ident', 'speech'],
  wire: ['base', 'wind', 'station', 'leg', 'track', 'procedure', 'flight', 'ident', 'speech'],
};

const only = (name, from, allowed) => ({
  name,
  severity: 'error',
  from: { path: `^${from}/` },
  to: { path: '^(src|client|server|tests)/', pathNot: `^(${allowed.join('|')})/` },
});

/** @type {import('dependency-cruiser').IConfiguration} */
module.exports = {
  forbidden: [
    {
      name: 'src-needs-nothing-outside',
      severity: 'error',
      from: { path: '^src/' },
      to: {
        pathNot:
          '^(src|node_modules/(geographiclib-geodesic|magvar|morse-decoder|typebox|kdbush|geokdbush|fast-xml-builder))/',
      },
    },
    only('client-needs-src-only', 'client', ['client', 'src']),
    only('server-needs-src-only', 'server', ['server', 'src']),
    ...Object.entries(below).map(([folder, lower]) =>
      only(
        `${folder}-looks-down`,
        `src/${folder}`,
        [folder, ...lower].map((each) => `src/${each}`),
      ),
    ),
    { name: 'no-cycles', severity: 'error', from: {}, to: { circular: true } },
    {
      name: 'no-orphans',
      severity: 'error',
      from: { orphan: true, pathNot: '(\\.d\\.ts|\\.config\\.ts|^tests/setup\\.ts)$' },
      to: {},
    },
  ],
  options: {
    tsPreCompilationDeps: true,
    tsConfig: { fileName: 'tsconfig.json' },
    doNotFollow: { path: 'node_modules' },
    enhancedResolveOptions: { exportsFields: ['exports'], conditionNames: ['import', 'default'] },
  },
};
