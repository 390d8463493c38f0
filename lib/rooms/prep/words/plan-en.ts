/** What the plan's screen says. */
import type { WayOut } from '#lib/prep/prep-plan.ts'
import type { PortionTotal } from '#lib/recipes/portion-total.ts'
import type { PlanLack } from '#lib/rooms/prep/views/plan-entry.ts'
import { parEn } from '#lib/rooms/prep/words/par-en.ts'
import { tasksEn } from '#lib/rooms/prep/words/tasks-en.ts'
import { list } from '#lib/words/counted-en.ts'
import { sayDate, sayWeekdayInFull } from '#lib/words/day-en.ts'
import { sayPortionTotal } from '#lib/words/recipe/portion-total-en.ts'

const LACKS: Readonly<Record<PlanLack, string>> = {
  day: 'Say the day',
  doors: 'Say when doors open and close',
  guests: 'Guests are a whole number',
  group: 'Each group has a name and its guests',
  crew: 'Say from when to when each is there',
  initials: 'Each of the crew has initials',
  twice: 'The same initials are an adult’s and a student’s',
  items: 'Sell at least one item',
}

export const planEn = {
  ...tasksEn,
  title: 'Plan',
  titleOf: (on: string) => `Plan ${sayDate(on)}`,
  day: sayDate,
  connecting: 'Looking up the station…',
  notYours: 'Planning is for the lead and the person in charge. Join this device for it first.',
  noStation: 'No station is set up yet. Set one up first, then plan its day.',
  lost: 'The server doesn’t answer. Nothing that is typed is lost.',
  toStart: 'To the first page',
  start: 'First page',
  toPrep: 'Prep',
  toTasting: 'Taste a small batch',
  planned: 'Planned already',
  plannedRow: (on: string, opens: string, closes: string, isPractice: boolean) =>
    `${sayDate(on)}, ${opens} to ${closes}${isPractice ? ', practice' : ''}`,
  over: 'over, never opened: drop it',
  anotherDay: (planned: number) => (planned === 0 ? 'Plan a day' : 'Plan another day'),
  sub: (
    { isOpen, kind, doorsOpen }: { isOpen: boolean; kind: string; doorsOpen: string },
    assemble: number,
  ) =>
    [
      isOpen ? 'open now' : 'planned',
      ...(kind === 'practice' ? ['practice'] : []),
      `doors ${doorsOpen}`,
      `${assemble} assemble`,
    ].join(' · '),
  guests: (count: number) => (count === 1 ? 'guest' : 'guests'),
  guestsHow: (past: number) =>
    past === 0
      ? 'portions: a guess by the menu'
      : past === 1
        ? 'portions: by 1 service so far'
        : `portions: by ${past} services so far`,
  fewer: 'One guest fewer',
  more: 'One guest more',
  dayAndCrew: 'Day and crew',
  back: 'Back',
  legend: {
    /** Real ones where each food has as many; what its panel says of them wins. */
    days: (isReal: boolean) => (isReal ? '10 real days' : '10 computed days'),
    enough: 'enough',
    short: 'too few',
    load: (loads: number) => (loads === 1 ? 'a load' : `${loads} loads`),
    larder: 'larder',
  },
  noLoads: 'none',
  panTitle: (name: string, loads: number, total: PortionTotal, atHand = 0) =>
    `${name}: ${[
      ...(loads === 0 ? [] : [`${tasksEn.loads(loads)}, ${sayPortionTotal(total)}`]),
      ...(atHand === 0 ? [] : [`${atHand} in the larder`]),
    ].join(' and ')}`.replace(/: $/, ': none'),
  par: parEn,
  fewerLoads: 'load less',
  moreLoads: 'load more',
  minutes: (count: number, isGuess: boolean) =>
    isGuess ? `${count} min, a guess` : `${count} min`,
  minutesLess: '5 min shorter',
  minutesMore: '5 min longer',
  how: {
    ahead: 'Cooked ahead, cooled, reheated',
    fromRoom: 'Of cans or dry stores',
    frozen: 'Comes frozen',
  },
  inIce: (minutes: number) => `in ice: 41 °F in ${tasksEn.hours(minutes)}`,
  notInIce: 'Not in ice',
  ownTable: 'Raw food: own table and board',
  takePlan: 'Take this plan',
  takeSub: 'The crew gets its tasks',
  taken: 'Taken. The tablets show the tasks.',
  asTaken: 'As taken',
  toBatches: 'To the batches',
  /** Which time falls to nobody, on the button that leads there, and of which task. */
  toSettle: (day: string, clock: string) => `Settle ${day} ${clock}`,
  toSettleOf: (task: string | null, count: number) =>
    `${task ?? 'no certified adult'}${count === 1 ? '' : ` (1 of ${count})`}`,
  idle: (count: number) =>
    count === 1
      ? '1 student has no task in a period'
      : `${count} times a student has no task in a period`,
  alsoOn: (days: readonly string[]) => `Show ${list(days.map(sayDate), 'and')}`,
  doors: (clock: string) => `doors open ${clock}`,
  crewLack: (from: string, to: string) =>
    `From ${from} to ${to} students are here without a certified adult.`,
  ways: 'Ways out',
  nextLack: 'The next one',
  way: (
    way: WayOut,
    say: { readonly clock: (at: number) => string; readonly item: (id: string) => string },
  ): { readonly label: string; readonly more: string } => {
    switch (way.way) {
      case 'another-reader':
        return {
          label: 'Another reader',
          more:
            way.from === way.to
              ? `a certified adult at ${say.clock(way.from)}`
              : `a certified adult, ${say.clock(way.from)} to ${say.clock(way.to)}`,
        }
      case 'ice':
        return {
          label: 'Ice, shallow pans',
          more: `41 °F by ${say.clock(way.readAt)}, or thrown out`,
        }
      case 'cook-in-the-morning':
        return {
          label: 'Cook it that day',
          more: `${say.clock(way.from)} to ${say.clock(way.to)}, and hold it hot`,
        }
      case 'smaller-menu':
        return {
          label: 'Leave it out',
          more:
            way.items.length === 0
              ? 'every item is sold without it'
              : `without ${way.items.map(say.item).join(', ')}`,
        }
      case 'none':
        return { label: 'No way out', more: 'Choose another day, or other people.' }
    }
  },
  lacks: LACKS,
  form: {
    kind: 'What it is',
    real: 'A real one',
    practice: 'Practice',
    on: 'Day',
    /** Of a date that may not be typed yet. */
    onDay: (on: string) => (on === '' ? 'Day' : `Day: ${sayWeekdayInFull(on)}`),
    opens: 'Doors open',
    closes: 'Doors close',
    bells: 'Bells',
    noBells: 'No bells',
    walkIn: 'Guests who walk in',
    groups: 'Groups that are known',
    groupLabel: 'Group (nobody’s name)',
    groupGuests: 'Guests',
    groupAt: 'At',
    addGroup: 'Another group',
    remove: 'Remove',
    items: 'What is sold',
    crew: 'Who is there',
    initials: 'Initials',
    adult: 'Certified adult',
    student: 'Student',
    date: 'On',
    day: sayDate,
    cell: (who: string, period: string, on: string) => `${who}, ${period}, ${sayDate(on)}`,
    somebody: 'Somebody',
    addTime: 'Another time',
    removeTime: 'Not at this time',
    from: 'From',
    to: 'To',
    addCrew: 'Somebody else',
    dayBefore: 'The same people the day before',
    byBells: 'As the set-up says for these bells',
    send: 'Plan this day',
    change: 'Change the plan',
    sent: 'Planned.',
    changed: 'Changed.',
  },
} as const
