// The one table of who may import whom. dependency-cruiser's rules, the gates and DEVELOPERS.md follow it.

/** Ground floor of the core, lowest first: each room may import those before it. */
export const FLOOR = ['error', 'unit', 'source', 'check', 'number', 'table'];

/** Rooms above the floor: each may import the whole floor and exactly the rooms listed. */
export const ROOMS = {
  conductor: [],
  joint: ['conductor'],
  bundle: ['conductor'],
  heat: ['conductor', 'bundle'],
  load: ['conductor'],
  protection: ['conductor', 'heat', 'load'],
  relay: ['conductor', 'load'],
  feed: ['conductor', 'heat', 'load', 'protection', 'relay'],
  divider: [],
  temperature: ['divider'],
  level: ['divider'],
  calibration: ['divider', 'temperature', 'level'],
  signal: [],
  bus: [],
  network: ['conductor', 'load'],
  supply: ['conductor', 'load', 'network', 'protection'],
};

/**
 * Packages by folder, from the core outwards. `imports`: our own packages it may import. `modules`: packages from the
 * registry, each with the part of the source that may import it. `node`: whether Node's own modules may be imported;
 * what runs in a page must not.
 */
export const PACKAGES = {
  loomwright: { imports: [], modules: {}, node: false },
  worked: {
    imports: ['loomwright'],
    modules: { mathjs: 'src/quantity/adapter\\.ts$', '@observablehq/plot': 'src/plot/' },
    node: false,
  },
  harness: {
    imports: ['worked', 'loomwright'],
    modules: { zod: 'src/', yaml: 'src/', 'fastest-levenshtein': 'src/' },
    node: false,
  },
  cli: { imports: ['harness', 'worked', 'loomwright'], modules: { commander: 'src/' }, node: true },
};

/** Rooms of the core that a room may import, itself included. */
export function allowedRooms(room) {
  const level = FLOOR.indexOf(room);
  if (level >= 0) return FLOOR.slice(0, level + 1);
  if (!(room in ROOMS)) throw new Error(`no room '${room}' in the table`);
  return [...FLOOR, ...ROOMS[room], room];
}

const escape = (text) => text.replace(/[.*+?^${}()|[\]\\/]/g, '\\$&');
const anyOf = (names) => `(?:${names.map(escape).join('|')})`;

const core = '^packages/loomwright/src/';

function roomRules() {
  return [...FLOOR, ...Object.keys(ROOMS)].map((room) => ({
    name: `room-${room}`,
    severity: 'error',
    comment: `${room} may import ${allowedRooms(room).join(', ')}`,
    from: { path: `${core}${room}/` },
    to: { path: core, pathNot: `${core}${anyOf(allowedRooms(room))}/` },
  }));
}

function packageRules() {
  const rules = [];
  for (const [folder, { imports, modules, node }] of Object.entries(PACKAGES)) {
    const own = `^packages/${folder}/src/`;
    const may = [
      own,
      ...imports.map((name) => `(?:^|/)packages/${name}/(?:src|dist)/`),
      ...Object.keys(modules).map((name) => `node_modules/${escape(name)}/`),
    ];
    rules.push({
      name: `package-${folder}`,
      severity: 'error',
      comment: `${folder} may import ${[...imports, ...Object.keys(modules), ...(node ? ['node'] : [])].join(', ') || 'nothing'}`,
      from: { path: own },
      to: { pathNot: may, ...(node ? { dependencyTypesNot: ['core'] } : {}) },
    });
    for (const [name, where] of Object.entries(modules)) {
      rules.push({
        name: `only-there-${name}`,
        severity: 'error',
        comment: `${name} may be imported by ${folder}/${where} alone`,
        from: { path: own, pathNot: `^packages/${folder}/${where}` },
        to: { path: `node_modules/${escape(name)}/` },
      });
    }
  }
  return rules;
}

/** The rules for dependency-cruiser. */
export const rules = [
  ...roomRules(),
  ...packageRules(),
  {
    name: 'no-cycle',
    severity: 'error',
    comment: 'modules must not import one another in a circle, types apart',
    from: {},
    to: { circular: true, viaOnly: { dependencyTypesNot: ['type-only'] } },
  },
  {
    name: 'resolves',
    severity: 'error',
    comment: 'an import leads nowhere',
    from: {},
    to: { couldNotResolve: true },
  },
];

/** dependency-cruiser's whole configuration. */
export const cruise = {
  forbidden: rules,
  options: {
    doNotFollow: { path: ['node_modules', '/dist/'] },
    tsPreCompilationDeps: true,
    enhancedResolveOptions: { exportsFields: ['exports'], conditionNames: ['import', 'default'] },
  },
};
