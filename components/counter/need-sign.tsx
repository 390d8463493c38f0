import styles from '#components/counter/turned.module.css'
import { type CounterWords, useCounterWords } from '#components/counter/words.tsx'
import { ALLERGEN_SETS } from '#lib/station/codes/allergen-sets.ts'
import type { NeedCode } from '#lib/station/codes/codes.ts'

/** Our own line drawings on a field of 48 by 48; a word always stands beneath. */
const DRAWN: Readonly<Record<string, readonly string[]>> = {
  milk: ['M15 8h18l-3 33H18Z', 'M16.5 20h15'],
  egg: ['M24 7c8 0 13 13 13 20s-5 14-13 14-13-7-13-14S16 7 24 7Z'],
  fish: [
    'M6 24c6-11 20-12 28-2l8-8v20l-8-8c-8 10-22 9-28-2Z',
    'M14 21.5v.1',
    'M22 18c2 4 2 8 0 12',
  ],
  shellfish: [
    'M38 14c-14-8-30 2-28 16 1 6 6 10 12 9',
    'M22 39c-3-2-4-6-1-8',
    'M38 14c-4 1-6 4-6 7M18 14l6 6M12 21l8 4M10 30l8 0',
    'M38 14l4-7M38 14l5 3',
  ],
  molluscs: [
    'M24 40C8 34 4 22 10 12c8-5 20-5 28 0 6 10 2 22-14 28Z',
    'M24 40V9M24 40 14 10M24 40 34 10',
  ],
  'tree-nuts': ['M10 20c0-8 28-8 28 0Z', 'M12 20c0 12 6 18 12 22 6-4 12-10 12-22', 'M24 14V7'],
  wheat: [
    'M24 44V14',
    'M24 14c-4-3-4-7 0-10 4 3 4 7 0 10Z',
    'M24 22c-5 0-8-3-8-8 5 0 8 3 8 8ZM24 22c5 0 8-3 8-8-5 0-8 3-8 8Z',
    'M24 32c-5 0-8-3-8-8 5 0 8 3 8 8ZM24 32c5 0 8-3 8-8-5 0-8 3-8 8Z',
  ],
  peanut: [
    'M24 5c7 0 10 6 8 12-1 4-1 6 1 9 4 7 0 17-9 17s-13-10-9-17c2-3 2-5 1-9-2-6 1-12 8-12Z',
    'M24 13v.1M20 19v.1M28 19v.1M20 31v.1M28 31v.1M24 36v.1',
  ],
  soy: [
    'M7 30C12 14 28 8 42 10c-1 14-14 28-30 28-4 0-6-3-5-8Z',
    'M17 30a4 4 0 1 0 .1 0ZM25 23a4 4 0 1 0 .1 0ZM33 16a3 3 0 1 0 .1 0Z',
  ],
  sesame: [
    'M14 10c4 4 4 9 0 11-4-2-4-7 0-11ZM33 7c4 4 4 9 0 11-4-2-4-7 0-11Z',
    'M24 21c4 4 4 9 0 11-4-2-4-7 0-11ZM12 30c4 4 4 9 0 11-4-2-4-7 0-11ZM36 29c4 4 4 9 0 11-4-2-4-7 0-11Z',
  ],
  leaf: ['M8 40C6 20 18 8 42 8c0 24-12 34-28 30', 'M8 40c6-12 14-18 24-22'],
  other: ['M24 7 41 24 24 41 7 24Z'],
}

const GLUTEN: readonly NeedCode[] = ['gluten', 'gluten-cereals', 'barley', 'rye', 'oats']

const signOf = (words: CounterWords, code: NeedCode): string => {
  if (words.foodOf(code) === null) return /vega|vegetarian/.test(code) ? 'leaf' : 'other'
  if (GLUTEN.includes(code)) return 'wheat'
  if (DRAWN[code]) return code
  const group = Object.values(ALLERGEN_SETS)
    .flatMap((set) => set.groups)
    .find(({ kinds }) => kinds.includes(code))?.code
  return group !== undefined && DRAWN[group] ? group : 'other'
}

/** What a need is about, crossed out where it is kept away; a diet's leaf never is. */
export function NeedSign({ code }: { readonly code: NeedCode }) {
  const words = useCounterWords()
  const isOut = words.foodOf(code) !== null
  return (
    <svg className={styles.sign} viewBox="0 0 48 48" aria-hidden="true">
      {(DRAWN[signOf(words, code)] ?? []).map((line) => (
        <path key={line} d={line} />
      ))}
      {isOut && <path className={styles.cross} d="M5 5l38 38" />}
    </svg>
  )
}
