// What a package.json of ours must and must not say.

export interface Manifest {
  readonly name?: string;
  readonly version?: string;
  readonly license?: string;
  readonly type?: string;
  readonly private?: boolean;
  readonly exports?: Readonly<Record<string, unknown>>;
  readonly files?: readonly string[];
  readonly dependencies?: Readonly<Record<string, string>>;
  readonly devDependencies?: Readonly<Record<string, string>>;
  readonly peerDependencies?: Readonly<Record<string, string>>;
  readonly optionalDependencies?: Readonly<Record<string, string>>;
  readonly scripts?: Readonly<Record<string, string>>;
}

/** Everything that comes along when a package is installed. */
export function runtimeDependencies(manifest: Manifest): string[] {
  const { dependencies, peerDependencies, optionalDependencies } = manifest;
  return Object.keys({ ...dependencies, ...peerDependencies, ...optionalDependencies });
}

/** What is wrong with a package that people install, in words. `version` is the one that all packages share. */
export function packageFaults(manifest: Manifest, version: string): string[] {
  const faults: string[] = [];
  if (manifest.private === true) faults.push('is private');
  if (manifest.license !== 'MIT') faults.push('is not under the MIT licence');
  if (manifest.type !== 'module') faults.push('is not of type module');
  if (manifest.version !== version) faults.push(`has version ${manifest.version ?? 'none'}, the others ${version}`);
  if (manifest.files === undefined) faults.push('would publish everything');
  for (const script of Object.keys(manifest.scripts ?? {})) {
    if (/^(?:pre|post)?install$|^prepare$/.test(script)) faults.push(`runs a script when installed: ${script}`);
  }
  for (const [name, target] of Object.entries(manifest.exports ?? {})) {
    if (typeof target === 'object' && target !== null && 'import' in target)
      faults.push(`${name} uses the condition import`);
  }
  if (manifest.name === 'loomwright') {
    for (const name of runtimeDependencies(manifest)) faults.push(`the core depends on ${name}`);
  }
  return faults;
}
