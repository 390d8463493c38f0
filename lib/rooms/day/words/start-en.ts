/** What the first page says. */
import { sayClock } from '#lib/words/clock-en.ts'
import { counted } from '#lib/words/counted-en.ts'
import { titles } from '#lib/words/house/titles-en.ts'

const pans = (count: number): string => counted(count, 'pan', 'pans')

export const startWords = {
  what: 'Runs a made-to-order food line: orders, builds, pans that count themselves down, hand-over.',
  screens: 'Choose the screen that belongs where this tablet is',
  lead: { name: titles.pans, what: 'The lead: how full each pan is, what is left to sell' },
  along: [
    { path: '/counter', name: titles.counter, what: 'Takes the order and says it back' },
    { path: '/assembly', name: titles.assembly, what: 'Makes one build at a time' },
    { path: '/hand-over', name: titles.handOver, what: 'Gives it out by its mark' },
    { path: '/pick-up', name: titles.pickUp, what: 'For guests: whose number is ready' },
  ],
  line: 'The line',
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
  startRealWhat:
    'Pans start empty: each is loaded on Pans with its batch and reading. This station’s labels and prices are invented: for practice, not for guests.',
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

  tablets: 'Put it on tablets',
  tabletsWhat: 'Same network, no internet needed',
  qr: (address: string) => `QR code for ${address}`,
  otherAddresses: 'or',
  noAddress: 'This machine is on no network: connect it to one, then load this page again.',
  finding: 'Looking for this machine’s address …',
  steps: [
    'Point the tablet’s camera at the code, or type the address.',
    'Choose its screen above, and leave that tab open.',
    'In the tablet’s settings turn on “stay awake while charging”, and plug it in.',
  ],

  cautions: 'Before you serve',
  caution: [
    {
      head: 'Only the person in charge is proved.',
      text: 'Anyone on this network can open these screens and claim any other role. Use a network of your own.',
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
