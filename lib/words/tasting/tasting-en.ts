/** What the tasting’s screen says. */
import type { HeatLack } from '#lib/safety/cooking.ts'
import type { Handling, NeedCode } from '#lib/station/codes/codes.ts'
import type { TastingRefusal } from '#lib/tasting/command.ts'
import type { TastingLack } from '#lib/tasting/entry.ts'
import type { NotMeasured } from '#lib/tasting/measured.ts'
import { counted, list } from '#lib/words/counted-en.ts'
import { sayDate } from '#lib/words/day-en.ts'
import { inSentence, startingWith } from '#lib/words/findings-en.ts'
import { safetyWords } from '#lib/words/safety-en.ts'
import { needName } from '#lib/words/service-en.ts'

const LACKS: Readonly<Record<TastingLack, string>> = {
  food: 'Tap the pans that are tasted',
  time: 'Say the day and the time',
}

const NOT_MEASURED: Readonly<Record<NotMeasured, (name: string) => string>> = {
  zero: (name) => `${name}: 0 is no yield. Leave it empty if nobody weighed it.`,
  'not-understood': (name) => `${name}: type an amount, as 6 1/2 oz, 1 cup or 2 portions.`,
  'weight-for-counted': (name) => `${name}: its card counts, so count it too, as 2 portions.`,
  'no-density': (name) =>
    `${name}: its card is by volume and nobody said what that weighs. Measure it, as 1 cup.`,
  'no-portion': (name) =>
    `${name}: its card says an amount and no portions. Weigh or measure it, as 6 oz.`,
  'nothing-stated': (name) => `${name}: its card doesn’t say what it makes.`,
  'far-off': (name) => `${name}: four times off or more. Look at what is typed, and at the card.`,
}

const tasters = (numbers: readonly number[]): string =>
  numbers.length === 1
    ? `taster ${numbers[0]}`
    : `tasters ${list(
        numbers.map((one) => String(one)),
        'and',
      )}`

/** From this many on, numbers that follow one another are said as a run: a pan has room for few. */
const RUN = 3

/** Every one of them, in order: "1, 2, 4–6". */
const byNumber = (numbers: readonly number[]): string => {
  const runs: number[][] = []
  for (const one of [...numbers].sort((a, b) => a - b)) {
    const last = runs.at(-1)
    if (last && last.at(-1) === one - 1) last.push(one)
    else runs.push([one])
  }
  return runs
    .flatMap((run) => (run.length < RUN ? run.map(String) : [`${run[0]}–\u2060${run.at(-1)}`]))
    .join(', ')
}

const cookOn = (name: string, why: HeatLack): string => `${name}: ${safetyWords.heatLack[why]}`

const andAll = (names: readonly string[]): string => list(names.map(inSentence), 'and')

const refusal = (refused: TastingRefusal, name: (component: string) => string): string => {
  switch (refused.code) {
    case 'in-the-past':
      return 'That time is over. Choose a later one.'
    case 'no-such-time':
      return 'Clocks are set forward over that time. Choose another.'
    case 'over-midnight':
      return 'It has to end after it begins, on the same day.'
    case 'nothing-tasted':
      return 'Something has to be tasted. To taste nothing, drop it.'
    case 'no-such-component':
      return `${name(refused.component)} isn’t on this line any more.`
    case 'no-such-tasting':
      return 'This tasting isn’t there any more.'
    case 'no-such-taster':
      return 'There is no taster of that number.'
    case 'no-such-need':
      return 'The line doesn’t know that need. Ask again.'
    case 'too-many-tasters':
      return 'There are 20 tasters already.'
    case 'already-so':
      return 'It is so already: nothing was done twice.'
    case 'over':
      return 'This tasting is over.'
    case 'not-made':
      return 'It wasn’t made yet.'
    case 'not-ready':
      return 'Nobody said that it is ready to taste.'
    case 'not-cooked-here':
      return 'That isn’t cooked, so there is nothing to read.'
    case 'reading-lacks':
      return safetyWords.lack[refused.lack]
    case 'reading-asked':
      return safetyWords.question(refused.question, refused.read)
    case 'cook-on':
      return refused.foods.map((one) => cookOn(name(one.component), one.why)).join(' ')
    case 'no-initials':
      return 'Who weighed it? Type your initials to save a yield.'
    case 'id-used-for-something-else':
      return 'That wasn’t taken. Try it once more.'
    case 'not-asked':
      return `Ask ${tasters(refused.tasters)} first.`
    case 'nobody-can-taste':
      return `Nobody here can taste ${list(
        refused.components.map((one) => inSentence(name(one))),
        'and',
      )}. Ask another taster, or leave it out.`
    case 'not-measured':
      return NOT_MEASURED[refused.because](name(refused.component))
  }
}

export const tastingEn = {
  title: 'Tasting',
  what: 'A small batch to try. It touches no pan, no service and no larder.',
  caution: 'Shows what labels declare; proves nothing. Local code and the person in charge decide.',
  notLead: 'Only a device that leads plans tastings. The lead lets one in on Devices.',
  noStation: 'No line is published yet. Set one up and publish it first.',
  lost: 'The laptop doesn’t answer. What is drawn may be old.',
  looking: 'Looking …',
  toPlan: 'Plan',
  toFirstPage: 'To the first page',
  back: 'Back',
  line: 'The line: tap what is tasted',
  lineOf: 'The line, with who can taste what',
  all: 'Tastings',
  another: 'Plan a tasting',
  row: (on: string, from: string, names: readonly string[]) =>
    `${sayDate(on)}, ${from}: ${list(names, 'and')}`,
  titleOf: (on: string, from: string, to: string, period: string | null) =>
    `Tasting ${sayDate(on)}, ${period ?? `${from} to ${to}`}`,
  sub: (portions: number, count: number, from: string, to: string) =>
    `${from} to ${to}, ${counted(portions, 'portion', 'portions')} of each, ${counted(count, 'taster', 'tasters')}`,

  form: {
    on: 'Day',
    from: 'From',
    to: 'To',
    period: 'Class period',
    ownTime: 'Own time',
    portions: 'Portions of each',
    tasters: 'Tasters',
    fewer: (what: string) => `One fewer: ${what}`,
    more: (what: string) => `One more: ${what}`,
    items: 'Or all of',
    send: 'Plan this tasting',
    lacks: (lack: TastingLack) => LACKS[lack],
    chosen: (names: readonly string[]) =>
      names.length === 0 ? 'Nothing yet' : startingWith(list(names.map(inSentence), 'and')),
  },

  taster: (number: number) => `Taster ${number}`,
  notAsked: 'not asked yet',
  notSure: 'not sure: tastes nothing',
  none: 'said: none',
  needs: (needs: readonly { readonly code: NeedCode; readonly handling: Handling }[]) =>
    needs
      .map(({ code, handling }) =>
        handling === 'keep-apart' ? `${needName(code)}, keep apart` : needName(code),
      )
      .join(' · '),
  askTitle: (number: number) => `Ask taster ${number}`,
  question: '“Do you have any allergies, or anything you don’t eat?”',
  tile: (code: NeedCode) => startingWith(needName(code)),
  handling: (handling: Handling) => (handling === 'keep-apart' ? 'keep apart' : 'leave out'),
  saidNone: 'They said: none',
  saidNotSure: 'Not sure',
  notSureHint: 'counts as unknown',
  saidThese: (count: number) => `Said: ${counted(count, 'thing', 'things')}`,
  tapFirst: 'Tap what they said',
  addTaster: 'Another taster',
  onPan: (name: string, said: readonly string[]) => `${name}: ${said.join(', ')}`,
  isOn: 'tasted',
  isOff: 'not tasted',
  /** Over a pan, each always by its number: a count beside numbers would be read as one of them. */
  over: {
    can: (numbers: readonly number[]) => `can ${byNumber(numbers)}`,
    cannot: (numbers: readonly number[]) => `not ${byNumber(numbers)}`,
    unknown: (numbers: readonly number[]) => `ask ${byNumber(numbers)}`,
  },
  can: (number: number) => `taster ${number} can`,
  cannot: (number: number) => `taster ${number} can’t`,
  unknown: (number: number) => `taster ${number} isn’t known`,
  why: (number: number, because: string) => [`Taster ${number} can’t:`, `${because}.`] as const,
  unsure: (name: string) => `${name}: not sure what they can eat`,
  /** Behind what names the food. */
  instead: (other: number) => `Taster ${other} tastes it instead.`,
  nobody: (name: string) => `Nobody here can taste ${inSentence(name)}.`,
  leaveOut: (name: string) => `Leave out ${inSentence(name)}`,
  make: 'Everybody is asked: make it',
  makeSub: 'The card for this many comes up.',
  toAsk: (numbers: readonly number[]) => `Ask ${tasters(numbers)}`,
  toSettle: (names: readonly string[]) => `Nobody can taste ${list(names.map(inSentence), 'or')}`,
  drop: 'Drop this tasting',
  dropSure: 'Yes, drop it',
  whoTastes: (numbers: readonly number[]) => `For ${tasters(numbers)}`,

  atLeast: (limit: string) => `At least ${limit}`,
  cookTo: (limit: string) => `At least ${limit}: read it before anybody tastes`,
  tooLow: (read: string, why: HeatLack) =>
    why === 'too-low'
      ? `${read}: cook on, then read it again`
      : `${read}. ${safetyWords.heatLack[why]}`,
  isRead: (read: string) => `${read}: it came to its limit`,
  read: (name: string) => `Read ${inSentence(name)}`,
  readAgain: (name: string) => `Read ${inSentence(name)} again`,
  record: (read: string | null) => (read === null ? 'Type the temperature' : `Record ${read}`),
  recordLow: (read: string) => `Record ${read} and cook on`,
  stood: 'Stands covered, seconds',
  ready: 'Ready to taste',
  readySub: 'Then it is tasted and weighed.',
  toRead: (names: readonly string[]) => `Not read yet: ${andAll(names)}`,
  toCookOn: (names: readonly string[]) => `Cook on: ${andAll(names)}`,
  noCardToWeigh: (names: readonly string[]) =>
    `No card of its own, so nothing to weigh: ${andAll(names)}.`,
  noCard: 'No card of its own: take it as it is bought or mixed.',
  toTaste: 'to taste',
  stated: (amount: string) => `The card says: ${amount}`,
  nothingStated: 'The card doesn’t say what it makes.',
  weighed: 'It really made',
  weighedHint: '6 1/2 oz or 2 portions',
  save: 'Save this yield',
  saveWhy: 'Plans count with it until the card is changed.',
  initials: 'Initials',
  initialsToSave: 'Type your initials to save it',
  end: 'The tasting is over',
  endSub: 'What is left is eaten now or thrown out.',
  smallBatch: 'Weigh it: of so few portions a count says little.',
  isOver: (names: readonly string[]) =>
    names.length === 0
      ? 'It is over. No yield was saved.'
      : `It is over. Saved: ${list(names.map(inSentence), 'and')}.`,
  result: (typed: string, percent: string) => `${typed}, ${percent} of what the card says`,

  savedYield: 'saved: plans count with it',
  unsavedYield: 'not saved',
  toRecipe: 'On its recipe it can be taken out again',

  lostDo: 'No answer. Nothing that is typed is lost: try again.',
  refusal,
} as const
