// What the doc block of a public function of the core must hold.

/** Every exported function of a source text with the doc block above it, or '' where there is none. */
export function docBlocks(text: string): Map<string, string> {
  const blocks = new Map<string, string>();
  for (const match of text.matchAll(/(\/\*\*(?:(?!\*\/)[^])*\*\/)?\s*export (?:async )?function\*? (\w+)/g)) {
    blocks.set(String(match[2]), match[1] ?? '');
  }
  return blocks;
}

/** Names that an index file passes on, types apart. */
export function passedOn(index: string): string[] {
  const lists = [...index.matchAll(/export \{([^}]*)\} from/g)].flatMap(([, list = '']) => list.split(','));
  return lists.map((name) => name.trim()).filter((name) => name !== '' && !name.startsWith('type '));
}

/** What is missing from a doc block, in words. `whole` asks for all parts; a plain conversion needs an example only. */
export function docFaults(block: string, whole: boolean): string[] {
  if (block === '') return ['has no doc block'];
  const faults: string[] = [];
  const needs = whole ? ['@param', '@returns', '@throws', '@source', '@example'] : ['@example'];
  for (const tag of needs) if (!block.includes(tag)) faults.push(`has no ${tag}`);
  const order = needs.map((tag) => block.indexOf(tag)).filter((at) => at >= 0);
  if (order.some((at, i) => i > 0 && at < Number(order[i - 1]))) faults.push(`has its parts out of order`);
  if (block.includes('@example') && !/@example[^]*\/\/=> *\S/.test(block))
    faults.push('has an example without its result');
  return faults;
}
