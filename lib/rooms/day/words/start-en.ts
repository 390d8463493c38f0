/** What the first page says. */
import { sayClock } from '#lib/words/clock-en.ts'
import { counted } from '#lib/words/counted-en.ts'
import { titles } from '#lib/words/house/titles-en.ts'

const pans = (count: number): string => counted(count, 'pan', 'pans')

export const startWords = {
  what: 'Runs a made-to-order food line: orders, builds, pans that count themselves down, hand-over.',
  sheet: {
    name: titles.sheet,
    what: 'For guests and inspectors: what is declared, what is shared, what isn’t known',
  },

  service: 'The service',
  none: 'No service is open.',
  noStation: 'No station is set up on this server.',
  open: (station: string, since: string) => `${station}: open since ${since}.`,
  openDemo: (station: string, since: string) => `${station}: a demo service, open since ${since}.`,
  demoCloses: 'It closes itself at the end of the day.',
  closed: (station: string, at: string) => `${station}: the last service was closed at ${at}.`,
  notLoaded: (count: number) => `${pans(count)} not loaded yet: the lead loads them on Pans.`,
  loaded: 'The pans are loaded: take an order at the counter.',
  startReal: 'Open a service',
  startRealWhat: 'Pans start empty: each is loaded on Pans with its batch and reading.',
  startDemo: 'Open a demo service',
  startDemoWhat:
    'To try things out, ready in one tap: batches, readings and loads are invented, initials “DEMO”.',
  demoInvented: 'Its batches, temperatures and initials (“DEMO”) are invented: nobody took them.',
  filling: 'Loading the pans with invented batches and readings …',
  guests: 'Guests expected',
  closes: 'Closes at',
  closesAsSetUp: 'as set up',
  /** "1:15 PM" from "13:15". */
  timeOfDay: (time: string) => sayClock(Date.parse(`2000-01-01T${time}Z`), 'UTC'),
  assemblers: 'Assemblers',
  guestsWrong: (most: number) => `Guests: a whole number from 0 to ${most}, or empty.`,
  assemblersWrong: (most: number) => `Assemblers: a whole number from 1 to ${most}, or empty.`,
  dayWhy: 'Left empty: as the station is set up. Forecasts and “about N min” use these.',
  plan: (guests: number | null, closes: string | null, assemblers: number) =>
    [
      guests === null ? 'Guests expected: not said' : `${guests} guests expected`,
      closes === null ? 'closing time not said' : `closes at ${closes}`,
      counted(assemblers, 'assembler', 'assemblers'),
    ].join(' · '),
  changeDay: 'Change',
  useDay: 'Use these',
  leaveDay: 'Leave it',
  dayUsed: 'Set.',
  toPans: 'To Pans',
  toCounter: 'To the counter',
  opening: 'Opening …',
  connecting: 'Connecting …',

  cautions: 'Before you serve',
  caution: [
    {
      head: 'A network of your own.',
      text: 'Tablets come in by the lead’s code. Over plain http, who shares the Wi-Fi can still listen, and copy a tablet’s way in. Don’t share its password with guests.',
    },
    {
      head: 'Allergies: ask, and tell the person in charge.',
      text: 'The screens show what was declared and what is shared on the line. They don’t promise more.',
    },
    {
      head: 'Local code and the certified person in charge decide.',
      text: 'The screens don’t replace labels, thermometers or a clean line.',
    },
  ],
} as const
