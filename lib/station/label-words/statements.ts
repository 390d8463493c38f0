/** Where a label says contains, may contain, or free from, and how far each reaches. */

/** `denied`: it can't be said to be free of it, which warns of it. */
export type Mode = 'listed' | 'contains' | 'warned' | 'denied' | 'free' | 'without'

export interface Statement {
  readonly mode: Mode
  /** Places in the letters: where its own words begin and end, and where it ends. */
  readonly from: number
  readonly words: number
  readonly to: number
  /** In brackets: it speaks of one ingredient. */
  readonly inBrackets: boolean
}

const S = '[- \\n]'
const MAKING =
  '(?:made|manufactured|produced|processed|packed|packaged|prepared|bottled|handled|baked|roasted|milled|stored)'
const SHARED =
  '(?:facility|facilities|factory|factories|plant|equipment|machinery|premises|site|environment)'
const ROOM = '(?:bakery|bakeries|kitchen|lines?|machines?|mill|building|area)'
const PASSES =
  '(?:process|handle|use|pack|package|store|make|contain|manufacture|produce)(?:s|es|d|ed)?'

/** "Made and packed in a", "baked on the same". */
const MADE_IN = `${MAKING}(?: (?:and|or) ${MAKING})? (?:in|on|at|by|using)(?: [a-z]+){0,3}?`

const phrase = (words: string): string => words.replaceAll(' ', S)

/** From memory, as such statements are printed; in the order in which they are tried at a place. */
const HEADS: readonly (readonly [Mode, string])[] = [
  [
    'warned',
    phrase(
      '(?:may|might|could)(?: also| possibly| still)? (?:contain|have|include|hold)(?: (?:some|small|trace|the odd))?(?: traces? of| amounts of)?',
    ),
  ],
  ['warned', phrase('(?:may|might|could)(?: also| possibly)? be present')],
  ['warned', phrase(`${MADE_IN} ${SHARED}(?! based)`)],
  [
    'warned',
    phrase(`${MADE_IN} ${ROOM} (?:that|which|where|also|handling|processing|used|shared)`),
  ],
  ['warned', phrase(`${SHARED}(?: (?:that|which|also|where|we)){0,3} ${PASSES}`)],
  ['warned', phrase(`shared (?:${SHARED}|${ROOM})`)],
  ['warned', phrase('cross (?:contact|contamination)')],
  ['warned', phrase('(?:not |un)suitable for')],
  ['denied', phrase('(?:cannot|can not|cant|unable to|do not|dont|not|no) guarantee[a-z]*')],
  [
    'denied',
    phrase('(?:not|never|isnt|arent|no longer|may|might|could)(?: [a-z]+){0,3} free (?:from|of)'),
  ],
  ['contains', phrase('contain(?:s|ing)? traces? of')],
  ['warned', phrase('traces?(?: amounts?)? of')],
  ['free', phrase('free (?:from|of)')],
  ['free', phrase('(?:contains?|containing|has|have|with) (?:no|zero)')],
  ['free', phrase('(?:does|do|did) not contain')],
  ['free', phrase('(?:doesnt|dont) contain')],
  ['without', phrase('without(?: any)?')],
  ['without', phrase('no')],
  ['contains', phrase('contain(?:s|ing)?')],
  [
    'contains',
    phrase('allerg(?:ens?|y)(?: (?:information|statement|advice|warning|declaration))?'),
  ],
  ['listed', phrase('ingredients?')],
]

const HEAD = new RegExp(
  `(^|[^a-z])(?:${HEADS.map(([, pattern]) => `(${pattern})`).join('|')})(?![a-z])`,
  'g',
)

/** A line that ends in one of these goes on. */
const GOES_ON =
  /(?:^|[^a-z])(?:and|or|nor|of|the|a|an|any|that|which|also|with|in|on|from|may|contains?|some|traces?|process(?:es)?|handles?|uses?|packs?|following|as|well|for)$|[,(:;/]$/

interface Head {
  readonly mode: Mode
  readonly from: number
  readonly words: number
}

const headsIn = (text: string): readonly Head[] =>
  [...text.matchAll(HEAD)].map((hit) => {
    const [all, before = '', ...groups] = hit
    const mode = HEADS[groups.findIndex((one) => one !== undefined)]?.[0] ?? 'listed'
    return { mode, from: hit.index + before.length, words: hit.index + all.length }
  })

/** Where a statement ends that nothing else ends: a sentence, its bracket, a line that is done. */
const endOf = (text: string, head: Head, isWrapped: (line: number) => boolean): number => {
  let depth = 0
  for (let at = head.words; at < text.length; at++) {
    const sign = text[at] ?? ''
    if ('([{'.includes(sign)) depth++
    else if (')]}'.includes(sign)) {
      depth--
      if (depth < 0) return at
    } else if ('.!?¶'.includes(sign)) return at
    else if (sign === '\n' && head.mode !== 'listed' && head.mode !== 'contains') {
      const before = text.slice(head.from, at)
      if (!GOES_ON.test(before) && !isWrapped(at)) return at
    }
  }
  return text.length
}

/** How many brackets are open at a place. */
const depthAt = (text: string, at: number): number => {
  let depth = 0
  for (const sign of text.slice(0, at)) {
    if ('([{'.includes(sign)) depth++
    else if (')]}'.includes(sign) && depth > 0) depth--
  }
  return depth
}

/**
 * @param text letters as they are compared
 * @param isWrapped whether the line that begins behind a place goes on with the one before it
 */
export const statementsIn = (
  text: string,
  isWrapped: (line: number) => boolean,
): readonly Statement[] =>
  headsIn(text).map((head) => ({
    ...head,
    to: endOf(text, head, isWrapped),
    inBrackets: depthAt(text, head.from) > 0,
  }))

/**
 * The statement that speaks last of a place; null: none, so that it is an ingredient. "Can't be
 * guaranteed free from nuts" warns to its end.
 */
export const statementAt = (all: readonly Statement[], at: number): Statement | null => {
  const here = all.filter(({ from, to }) => from <= at && at < to)
  return here.find(({ mode }) => mode === 'denied') ?? here.at(-1) ?? null
}
