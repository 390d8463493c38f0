/** What is kept of people and of the house, until when and for whom; forgetting a guest. */
import { counted } from '#lib/words/counted-en.ts'
import { sayDay } from '#lib/words/day-en.ts'
import { needsEn } from '#lib/words/needs-en.ts'

const ROWS = {
  names: { name: 'Guests’ names', what: 'where a guest gave one' },
  reasons: { name: 'Why a guest keeps from it', what: 'allergy, celiac, faith, diet, dislike' },
  texts: { name: 'Words about a guest', what: 'typed by the crew' },
  initials: { name: 'Initials of readings', what: 'who read, threw out, decided' },
  guards: { name: 'What two may not change at once', what: 'names of stations, and how often' },
  larder: { name: 'The larder', what: 'food, dates and readings; whose initials, apart' },
  streams: { name: 'The service, order by order', what: 'numbers, food, what is kept apart' },
  tasters: { name: 'What tasters keep from', what: 'by number, no name beside it' },
  tastings: { name: 'Tastings', what: 'what was tried, when, and what a batch really made' },
  records: { name: 'The service in sums', what: 'counts, waste, readings: no guest in it' },
  stations: { name: 'The line', what: 'recipes, amounts, prices' },
  drafts: {
    name: 'The line as it is being changed',
    what: 'recipes, prices, initials by period; when it was published, and by whose passphrase',
  },
  labels: { name: 'Labels that were read', what: 'what they say, when, which adult proved it' },
  photos: { name: 'Pictures of labels', what: 'made small, without place or time' },
  adults: { name: 'Adults', what: 'names; passphrases only scrambled' },
  devices: { name: 'Devices', what: 'names and places; their keys only scrambled' },
  codes: { name: 'Codes that are open', what: 'only scrambled, ten minutes' },
  house: { name: 'The house', what: 'when it was made' },
  retention: { name: 'How many days', what: 'what is set here' },
  demo: { name: 'The demo', what: 'all of it, in files of its own, gone when it is closed' },
  running: { name: 'That the server runs', what: 'its port' },
  scripts: { name: 'Key for scripts', what: 'for whoever owns the laptop’s folder' },
  waiting: { name: 'Orders that wait', what: 'on a tablet, until they are sent' },
  'half-typed': { name: 'An order half typed', what: 'on its tablet' },
  hands: { name: 'Initials and probe', what: 'on a tablet, to prefill' },
  device: { name: 'How a tablet is set', what: 'sound, size, left or right' },
  reloaded: { name: 'That a page is new', what: 'on its tablet' },
} as const

const WHO = {
  counter: 'counter',
  assembly: 'assembly',
  'hand-over': 'hand-over',
  lead: 'lead',
  'in-charge': 'person in charge',
  'pick-up': 'pick-up',
  own: 'that tablet',
} as const

export const privacyWords = {
  rows: ROWS,
  title: 'What is remembered',
  what: 'The program follows this table.',
  notLead: 'Only the lead’s device shows what is remembered',
  back: 'Devices',
  table: 'What is remembered, until when, and who sees it',
  columns: { what: 'What', now: 'Now', until: 'Until', where: 'Where', who: 'Who sees it' },
  /** Marks of time over the bars. */
  marks: (days: number) => ['sent', 'close', counted(days, 'day', 'days'), 'stays'] as const,
  until: (until: string, days: number) =>
    ({
      acknowledged: 'it is sent',
      close: 'the service closes',
      tasted: 'the tasting ends',
      stop: 'the server stops',
      forgotten: 'the tablet forgets it',
      retention: `${counted(days, 'day', 'days')} after the close`,
      replaced: 'it is replaced',
      removed: 'the lead removes it, or it runs out',
      always: 'stays',
    })[until] ?? until,
  nobody: 'nobody',
  who: (role: string) => WHO[role as keyof typeof WHO] ?? role,
  everyone: 'the crew',
  none: '0',
  elsewhere: 'on tablets',
  laptop: 'the laptop',
  tablet: 'the tablet',
  forgets: 'forgets',
  next: (at: number, timeZone: string) => `The next service goes on ${sayDay(at, timeZone)}.`,
  doubt: 'The laptop’s clock jumped: nothing is deleted by it until it is right again.',
  codes: 'What is kept apart is in the order itself, and goes with it: no name is beside it.',

  forget: {
    title: 'Forget a guest',
    what: 'Name, reason and words go at once, on every screen.',
    ticket: 'Ticket',
    noService: 'No service is open: its guests are forgotten already.',
    none: 'Type the ticket’s number',
    unknown: (ticket: string) => `No ticket ${ticket}`,
    is: (ticket: number, builds: number) =>
      `Ticket ${ticket}: ${counted(builds, 'build', 'builds')}`,
    named: (name: string) => `“${name}”`,
    act: (ticket: number) => `Forget the guest of ${ticket}`,
    sure: (ticket: number) => `Yes, forget ${ticket}`,
    sureWhy: 'It can’t be taken back. What is kept apart stays with the order.',
    done: (ticket: number) => `The guest of ${ticket} is forgotten`,
    not: 'Leave it',
  },
  reasons: {
    title: 'Reasons',
    what: 'For the person in charge, by passphrase. They are shown once, and gone when you leave.',
    show: 'Show the reasons',
    hide: 'Hide them',
    none: 'No guest of this service gave a reason.',
    of: needsEn.reasons as Readonly<Record<string, string>>,
  },
  pad: { pad: 'Number pad', takeBack: 'Take one back', minus: 'Minus', point: 'Point' },
} as const
