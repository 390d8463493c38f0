/** What the Deliveries screen says. */
import type { SentBack } from '#lib/larder/delivery.ts'
import type { EntryLack } from '#lib/larder/receiving-entry.ts'
import type { LabelKnown } from '#lib/larder/receiving-view.ts'
import type { TemperatureLimit, TimeLimit, Written } from '#lib/safety/limits.ts'
import type { ReadingQuestion } from '#lib/safety/readings.ts'
import type { Arrival, TurnedAway } from '#lib/safety/receiving.ts'
import type { Scale, Temperature } from '#lib/safety/temperature.ts'
import { counted } from '#lib/words/counted-en.ts'
import { sayDate, sayDateOfYear } from '#lib/words/day-en.ts'
import { safetyWords } from '#lib/words/safety-en.ts'

const COMES: Readonly<Record<Arrival, string>> = {
  cold: 'Cold',
  milk: 'Milk',
  shellfish: 'Clams, oysters',
  eggs: 'Eggs in shell',
  frozen: 'Frozen',
  hot: 'Hot',
  dry: 'Dry, canned',
}

const READ: Readonly<Record<Arrival, string>> = {
  cold: 'Between two packs',
  milk: 'Between two packs',
  shellfish: 'Air in the truck or box',
  eggs: 'Air in the truck or box',
  hot: 'Middle of the food',
  frozen: '',
  dry: '',
}

const BACK: Readonly<Record<SentBack, string>> = {
  'too-warm': 'too warm',
  'not-hot': 'not hot enough',
  thawed: 'thawed',
  'past-date': 'past its date',
  damaged: 'Pack damaged',
  'signs-of-warmth': 'It was warm before',
  'wrong-food': 'Not what was ordered',
  other: 'Something else',
}

const LACKS: Readonly<Record<EntryLack, string>> = {
  same: 'Same product as last time?',
  comes: 'How does it come?',
  cold: 'Look at its label: cold or not?',
  temperature: 'Read its temperature',
  sure: 'Is that figure right?',
  solid: 'Is it frozen hard?',
  date: 'Type its date',
  year: 'Type the year too',
  'no-date': 'That isn’t a date',
  lot: 'Type its lot',
  'lot-too-long': 'The lot is too long',
  packs: 'How many packs?',
  probe: 'Which probe?',
  initials: 'Your initials',
}

const sayDegrees = ({ tenths, scale }: Temperature): string =>
  `${tenths % 10 === 0 ? tenths / 10 : (tenths / 10).toFixed(1)} °${scale}`

const sayLimit = (limit: TemperatureLimit, scale: Scale): string => safetyWords.limit(limit, scale)

const cite = ({ document, paragraph, certainty }: Written): string =>
  `${document}, ${paragraph}${certainty === 'memory' ? ', from memory' : ''}.`

const sayAgainst = (because: TurnedAway): string => {
  switch (because.code) {
    case 'past-date':
      return `Its date was ${sayDateOfYear(because.useBy)}. ${cite(because.written)}`
    case 'thawed':
      return `It comes frozen and has thawed. ${cite(because.written)}`
    case 'too-warm':
    case 'not-hot':
      return `${sayDegrees(because.read)}: it has to be ${sayLimit(because.limit, because.read.scale)}. ${cite(because.limit)}`
  }
}

const KNOWN: Readonly<Record<LabelKnown, string | null>> = {
  read: null,
  unread: 'label not read',
  'too-old': 'read label again',
}

export const receivingWords = {
  title: 'Deliveries',
  what: 'Tap what came. Local code and the person in charge decide.',
  toLarder: 'Larder',
  notLead: 'Only a device that leads receives deliveries. The lead lets one in on Devices.',
  noStation: 'There is no station yet whose food could come. Set one up first.',
  others: 'In no pan of the line',
  line: 'The line, and what goes into each pan',
  today: (time: string) => `✓ ${time}`,
  wentBack: 'sent back',
  label: KNOWN,
  panel: (food: string) => `Delivery: ${food}`,
  never: 'Never came before.',
  last: (day: string) => `Last came ${day}`,
  lastLot: (lot: string | null) => (lot === null ? 'no lot' : `lot ${lot}`),
  maker: (maker: string | null, pack: string | null) =>
    [maker, pack].filter((one) => one !== null).join(', '),
  same: {
    legend: 'Same product as last time?',
    same: 'Same',
    other: 'Another one',
    'not-sure': 'Don’t know',
  },
  /** It never came: the label that was read stands in for last time. */
  first: {
    legend: (readOn: string | null) =>
      `First time. Its label was read${readOn === null ? '' : ` on ${sayDateOfYear(readOn)}`}: is this that very product?`,
    same: 'Yes, that one',
  },
  firstUnread:
    'First time, and nobody has read its label: unknown to every guest until it is read.',
  cold: {
    legend: (isItself: boolean) =>
      isItself
        ? 'On the line it is held hot or cold. Does its label want it cold?'
        : 'It goes into hot or cold food. Does its label want it cold?',
    yes: 'Yes, or not sure',
    no: 'No, dry is right',
  },
  becomesUnread: 'Unknown to every guest until its label is read. Store it apart.',
  comes: { legend: 'How does it come?', ways: COMES },
  comesAs: (comes: Arrival) => COMES[comes],
  otherWay: 'otherwise',
  read: READ,
  slots: { degrees: 'Temperature', date: 'Date on the pack', packs: 'Packs' },
  limit: sayLimit,
  met: 'in its limit',
  degrees: (text: string, scale: Scale) =>
    `${text === '' ? '–' : text.replace('-', '−')} °${scale}`,
  date: (figures: string, isMonthFirst: boolean) =>
    figures === '' ? (isMonthFirst ? 'MM DD' : 'DD MM') : figures.replace(/(\d\d)(?=\d)/g, '$1 '),
  dateSaid: (date: string, isOfThisYear: boolean) =>
    isOfThisYear ? sayDate(date) : sayDateOfYear(date),
  noDate: 'No date',
  lot: 'Lot',
  noLot: 'No lot',
  packs: 'Packs',
  keys: {
    pad: 'Number pad',
    takeBack: 'Take the last figure back',
    minus: 'Minus',
    point: 'Point',
  },
  solid: { legend: 'Frozen hard, no sign of thawing?', yes: 'Frozen hard', no: 'Thawed' },
  probe: 'Probe',
  initials: 'Initials',
  signed: (initials: string, probe: string) => `${initials} reads with ${probe}`,
  signAnew: 'Change',
  lacks: LACKS,
  question: (question: ReadingQuestion) =>
    question.code === 'cannot-be' || question.must
      ? 'That can’t be. Read it again.'
      : `Is that right? On the other scale it would be usual.`,
  isRight: 'It is right',
  receive: 'Received',
  receiveNext: (food: string) => `then ${food}`,
  lastOne: 'the last one',
  cools: (limit: TimeLimit, cold: TemperatureLimit, scale: Scale) =>
    `Cool it to ${sayLimit(cold, scale)} within ${limit.withinMs / 3_600_000} h. ${cite(limit)}`,
  eggsCold: 'Put the eggs into a refrigerator at once.',
  lastDay: 'Today is its last day.',
  against: sayAgainst,
  sendBack: 'Send it back',
  sendBackWhy: (why: SentBack) => BACK[why],
  sendBackFor: 'Why does it go back?',
  cancel: 'Back',
  done: (food: string) => `${food}: received.`,
  doneUnread: (food: string) => `${food}: received. Its label is not read.`,
  doneBack: (food: string, why: SentBack) => `${food}: sent back, ${BACK[why].toLowerCase()}.`,
  readLabel: 'Read its label',
  unknown: 'The laptop doesn’t answer. Tap it again: it is recorded once.',
  lost: 'The laptop doesn’t answer. What is drawn may be old.',
  looking: 'Looking …',
  jumped: 'The laptop’s clock jumped: say on Larder whether it is right, then receive.',
  history: 'What came before',
  none: 'Nothing came yet.',
  row: (day: string, food: string, lot: string | null, useBy: string | null) =>
    [
      day,
      food,
      lot === null ? 'no lot' : `lot ${lot}`,
      useBy === null ? 'no date' : `to ${sayDateOfYear(useBy)}`,
    ].join(' · '),
  rowBack: (why: SentBack) => `sent back, ${BACK[why].toLowerCase()}`,
  count: (packs: number) => counted(packs, 'pack', 'packs'),
  find: {
    title: 'Is a lot called back?',
    lot: 'Lot, as it is announced',
    go: 'Find it',
    found: (count: number, lot: string) =>
      count === 0
        ? `Nothing that came has lot ${lot}. Look at the packs too: a lot may have been left out.`
        : `${counted(count, 'delivery', 'deliveries')} with lot ${lot}. Find the packs and what was made of them, and call the person in charge.`,
  },
  refused: {
    'needs-initials': 'Say whose initials.',
    'lot-reading-lacks': 'Say which probe it was read with.',
    'lot-reading-asked': 'That temperature can’t be right. Check the number and the scale.',
    'larder-clock-unsure':
      'The laptop’s clock jumped: say on Larder whether it is right, then receive.',
    'delivery-no-such-food': 'No station lists that food any more. Load this page again.',
    'delivery-not-compared': 'Say whether it is the same product as last time.',
    'delivery-not-read': 'Unread it isn’t received: read it.',
    'delivery-dry-unasked': 'Look at its label first: does it want the food cold?',
    'delivery-no-lot': 'Clams, oysters and mussels aren’t received without the tag’s lot.',
    'delivery-date-far': 'No pack is dated that far ahead. Check the year.',
    'id-used-for-something-else': 'That was recorded as something else. Look at the list.',
  } as Readonly<Record<string, string>>,
  lotTooLong: (most: number) =>
    `A lot has at most ${most} letters. Type what is printed as the lot.`,
  notDone: 'That wasn’t taken. Load this page again.',
} as const
