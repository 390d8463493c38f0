/** Mutants that no test can notice, since nothing that is seen changes. */
export interface Explained {
  readonly file: string
  readonly before: string
  readonly after: string
  readonly why: string
}

export const EXPLAINED: readonly Explained[] = [
  {
    file: 'lib/needs/declared.ts',
    before: 'const recipe = station.recipes.find((one) => one.id === id)',
    after: 'const recipe = station.recipes.findLast((one) => one.id === id)',
    why: 'A document in which two have one id isn’t read.',
  },
  {
    file: 'lib/needs/declared.ts',
    before: 'const made = station.components.find((one) => one.id === component)',
    after: 'const made = station.components.findLast((one) => one.id === component)',
    why: 'A document in which two have one id isn’t read.',
  },
  {
    file: 'lib/needs/judge.ts',
    before:
      'export const RANK: Readonly<Record<Level, number>> = { no: 0, caution: 1, ask: 2, note: 3, ok: 4 }',
    after:
      'export const RANK: Readonly<Record<Level, number>> = { no: 0, caution: 1, ask: 2, note: 3, ok: 5 }',
    why: 'Only the order of the ranks counts.',
  },
  {
    file: 'lib/needs/judge.ts',
    before: "if (state === 'free' && touched === null && soiled === null) return NONE",
    after: 'if (false) return NONE',
    why: 'The quick way to what the rest comes to as well: nothing is found.',
  },
  {
    file: 'lib/needs/judge.ts',
    before:
      "if (state === 'free' && !facts.contactUnknown && !facts.touched && !facts.soiled) return NONE",
    after: 'if (false) return NONE',
    why: 'The quick way to what the rest comes to as well: nothing is found.',
  },
  {
    file: 'lib/needs/judge.ts',
    before:
      "if (state === 'free' && !facts.contactUnknown && !facts.touched && !facts.soiled) return NONE",
    after: "if (state === 'free' && !facts.contactUnknown && !facts.touched) return NONE",
    why: 'Where contacts are known, what a scoop brought into the pan on the line also reaches over it.',
  },
  {
    file: 'lib/needs/judge.ts',
    before:
      "if (state === 'free' && !facts.contactUnknown && !facts.touched && !facts.soiled) return NONE",
    after:
      "if (state === 'free' && !facts.contactUnknown && !facts.touched && facts.soiled) return NONE",
    why: 'Where contacts are known, what a scoop brought into the pan on the line also reaches over it.',
  },
  {
    file: 'lib/needs/judge.ts',
    before:
      'findings.length < 2 ? findings : [...findings].sort((one, other) => RANK[one.level] - RANK[other.level])',
    after: '([...findings].sort((one, other) => RANK[one.level] - RANK[other.level]))',
    why: 'One or none is in order; it only isn’t copied.',
  },
  {
    file: 'lib/spine/consequences/places.ts',
    before:
      'then === now ? [] : Object.keys(now).flatMap((id): Suspect[] => { const offSale = now[id]?.offSale return offSale && isFound(offSale, then[id]?.offSale ?? null) ? [{ what, id, lastGoodAt: offSale.lastGoodAt }] : [] })',
    after:
      '(Object.keys(now).flatMap((id): Suspect[] => { const offSale = now[id]?.offSale return offSale && isFound(offSale, then[id]?.offSale ?? null) ? [{ what, id, lastGoodAt: offSale.lastGoodAt }] : [] }))',
    why: 'The quick way to what the rest comes to as well: nothing is found.',
  },
  {
    file: 'lib/spine/consequences/places.ts',
    before: 'if (before.toThrowOut === after.toThrowOut) return []',
    after: 'if (false) return []',
    why: 'The quick way to what the rest comes to as well: nothing is found.',
  },
  {
    file: 'lib/spine/consequences/gone-food.ts',
    before: 'if (components.size === 0) return []',
    after: 'if (false) return []',
    why: 'The quick way to what the rest comes to as well: nothing is found.',
  },
  {
    file: 'lib/spine/consequences/handed-over-lists.ts',
    before: 'const isOfListed = builds.some(({ build }) => known.has(build))',
    after: 'const isOfListed = builds.some(() => true)',
    why: 'It is asked only where no build is more than is listed: then each of them is.',
  },
  {
    file: 'lib/spine/consequences/handed-over-lists.ts',
    before:
      'const { finishedAt, startedAt } = state.batches[id] ?? { finishedAt: null, startedAt: 0 }',
    after: 'const { finishedAt, startedAt } = state.batches[id] ?? { startedAt: 0 }',
    why: 'Of a batch that isn’t there nothing was handed over, so that no list says since when.',
  },
  {
    file: 'lib/spine/consequences/handed-over-lists.ts',
    before:
      'const { finishedAt, startedAt } = state.batches[id] ?? { finishedAt: null, startedAt: 0 }',
    after:
      'const { finishedAt, startedAt } = state.batches[id] ?? { finishedAt: null, startedAt: 1 }',
    why: 'Of a batch that isn’t there nothing was handed over, so that no list says since when.',
  },
  {
    file: 'lib/needs/declared.ts',
    before: "const ingredient = ingredients.get(through.at(-1) ?? '')",
    after: "const ingredient = ingredients.get(through.at(-1) ?? 'contains')",
    why: 'A way ends with its ingredient, so that it is never empty.',
  },
]
