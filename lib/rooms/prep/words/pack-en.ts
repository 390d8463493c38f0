/** The pack list, on the crew's tablets and on paper. */
import type { PanDepthIn, PanSize } from '#lib/measure/pans.ts'
import { scoopHandle } from '#lib/measure/scoops.ts'
import type { PackGroup, PackItem, PlainThing } from '#lib/rooms/prep/facts/pack-list.ts'
import type { PortionRule } from '#lib/station/station-document.ts'
import { counted, list } from '#lib/words/counted-en.ts'
import { inSentence } from '#lib/words/findings-en.ts'
import { quantityEn } from '#lib/words/quantity-en.ts'

type BackUp = Extract<PackItem, { readonly what: 'back-up' }>

/** "half, 4 in", in a pan that is drawn. */
const panShort = (size: PanSize, depthIn: PanDepthIn): string =>
  `${size}, ${depthIn === 2.5 ? '2 1/2' : depthIn} in`

const FRACTIONS: Readonly<Record<number, string>> = {
  0.125: '1/8',
  0.25: '1/4',
  0.3333: '1/3',
  0.5: '1/2',
  0.6667: '2/3',
  0.75: '3/4',
}

const numeral = (value: number): string => {
  const whole = Math.floor(value)
  const rest = FRACTIONS[Number((value - whole).toFixed(4))]
  if (rest === undefined) return String(value)
  return whole === 0 ? rest : `${whole} ${rest}`
}

const UNITS = { cup: 'cup', tbsp: 'Tbsp', tsp: 'tsp' } as const

/** "#16 blue scoop", "2 fl oz ladle", "tongs". */
const toolName = (rule: PortionRule): string => {
  switch (rule.tool) {
    case 'scoop':
      return `${quantityEn.scoop(rule.number, scoopHandle(rule.number)?.colour ?? null)} scoop`
    case 'ladle':
    case 'spoodle':
      return `${numeral(rule.flOz)} fl oz ${rule.tool}`
    case 'measure':
      return `${numeral(rule.size)} ${UNITS[rule.unit]} measure`
    case 'tongs':
    case 'tongs-pieces':
      return 'tongs'
    case 'bottle':
      return 'squeeze bottle'
    case 'piece':
      return 'gloved hand'
    case 'cup':
      return `${numeral(rule.flOz)} fl oz cup`
  }
}

const cupSize = (rule: PortionRule): string =>
  rule.tool === 'cup' ? `${numeral(rule.flOz)} fl oz cups` : 'cups'

const PLAIN: Readonly<Record<PlainThing, string>> = {
  gloves: 'Pairs of gloves',
  probes: 'Probe thermometers',
  wipes: 'Probe wipes',
  bucket: 'Sanitizer bucket',
  strips: 'Sanitizer strips',
  cloths: 'Clean cloths',
  'pan-labels': 'Labels for the pans',
  'wrap-labels': 'Labels or tape for wraps',
  'set-up-sheet': 'Set-up sheet of the line',
  'allergen-sheet': 'Allergen sheet',
  'readings-sheet': 'Readings: the paper log',
  markers: 'Markers',
}

/** What it means stands once, at the foot of the list. */
const COMMON = '*'

const PLAIN_RULE: Readonly<Record<PlainThing, string>> = {
  gloves: `for each assembler one every 30 minutes, and one for each tenth guest ${COMMON}`,
  probes: `one, and one in reserve ${COMMON}`,
  wipes: `one a reading of a pan that is read, and one in ten over ${COMMON}`,
  bucket: `one a line ${COMMON}`,
  strips: `one each time it is read, else every 2 hours ${COMMON}`,
  cloths: `one for each assembler, and one ${COMMON}`,
  'pan-labels': 'one a pan, and one a back-up pan',
  'wrap-labels': `one a guest, and one in ten over ${COMMON}`,
  'set-up-sheet': 'one',
  'allergen-sheet': 'one, at the counter',
  'readings-sheet': 'one',
  markers: `one for each assembler, and one ${COMMON}`,
}

type Named = (component: string) => string

/** What it is, in the words of a kitchen. */
const thing = (item: PackItem, name: Named): string => {
  switch (item.what) {
    case 'pan':
      return `${name(item.component)}: ${quantityEn.pan(item.size, item.depthIn)}, its lid`
    case 'back-up': {
      const pan = `${name(item.component)}: ${quantityEn.pan(item.size, item.depthIn)}, its lid`
      return item.own === null ? pan : `${pan}, own ${toolName(item.own)}`
    }
    case 'tool':
      return toolName(item.rule)
    case 'spare':
      return item.name
    case 'filled-cup':
      return `${name(item.component)} in lidded ${cupSize(item.rule)}, filled`
    case 'cup':
      return `Empty cups and lids for ${inSentence(name(item.component))} on the side`
    case 'wrap':
      return `Wraps for ${inSentence(name(item.component ?? ''))}`
    case 'bowl':
      return item.component === null
        ? 'Bowls or boxes'
        : `Bowls or boxes for ${inSentence(name(item.component))}`
    default:
      return PLAIN[item.what]
  }
}

/** How its number came about. */
const rule = (item: PackItem, name: Named): string => {
  switch (item.what) {
    case 'pan':
      return 'as the line is set up'
    case 'back-up':
      return item.own === null ? 'behind its pan' : 'behind its pan; that tool in no other pan'
    case 'tool':
      return `one a pan: ${list(
        item.components.map((one) => inSentence(name(one))),
        'and',
      )}`
    case 'spare':
      return 'for when one is missing'
    case 'filled-cup':
      return 'portions planned'
    case 'cup':
      return `portions planned: all of items that have it on the side, a quarter of the others ${COMMON}`
    case 'wrap':
    case 'bowl':
      return item.component === null
        ? `guests expected, else what is planned for them, and one in ten over ${COMMON}`
        : `portions planned, and one in ten over ${COMMON}`
    default:
      return PLAIN_RULE[item.what]
  }
}

export const packEn = {
  title: 'Pack list',
  toPack: 'Pack list',
  toTasks: 'To the tasks',
  groups: {
    pans: 'Pans of the line, left to right',
    'back-ups': 'Back-up pans',
    tools: 'Scoops and tools',
    serve: 'Cups, wraps and bowls',
    clean: 'Gloves, probes, sanitizer',
    paper: 'Labels, sheets, markers',
  } satisfies Readonly<Record<PackGroup, string>>,
  panShort,
  behind: 'Back-up',
  behindShort: ({ size, depthIn, own }: Pick<BackUp, 'size' | 'depthIn' | 'own'>) =>
    own === null ? panShort(size, depthIn) : `${panShort(size, depthIn)}, own ${toolName(own)}`,
  thing,
  rule,
  common: '* Common practice, no source.',
  packed: (done: number, all: number) => `${done} of ${counted(all, 'thing', 'things')} packed`,
  isPacked: 'Packed.',
  notPacked: 'Not packed after all.',
} as const
