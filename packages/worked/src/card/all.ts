import * as feed from './feed/index.js';
import type { Card } from './type.js';

/** Every card, by the name of its function. */
export const cards: Readonly<Record<string, Card>> = /* @__PURE__ */ (() =>
  Object.fromEntries(
    [feed]
      .flatMap((area) => Object.values(area) as readonly unknown[] as readonly Card[])
      .map((card) => [card.name, card]),
  ))();
