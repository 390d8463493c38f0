/** Who is in: making the house, letting tablets in, the devices that are in, and who is not. */

import { sayClock } from '#lib/words/clock-en.ts'
import { counted } from '#lib/words/counted-en.ts'
import { adultsWords } from '#lib/words/house/adults-en.ts'

const orders = (count: number): string => counted(count, 'order', 'orders')

/** What a place along the line is called, by role. */
const place = {
  'in-charge': 'Person in charge',
  lead: 'Pans',
  counter: 'Counter',
  assembly: 'Assembly',
  'hand-over': 'Hand-over',
  'pick-up': 'Pick-up',
} as const

type PlaceRole = keyof typeof place

const minutes = (ms: number): string =>
  ms < 60_000 ? 'under a minute' : `${Math.ceil(ms / 60_000)} min`

export const accessWords = {
  place,
  placeWhat: {
    'in-charge': 'An adult, by name and passphrase',
    lead: 'The lead: how full each pan is',
    counter: 'Takes the order',
    assembly: 'Makes one build at a time',
    'hand-over': 'Gives it out by its mark',
    'pick-up': 'For guests: whose number is ready',
  },
  room: 'The line, and who is at it',
  connecting: 'Looking …',
  lost: 'The server doesn’t answer.',
  again: 'Try again',
  toFirstPage: 'To the first page',

  /** Over every screen of the demo. */
  demoLine: 'Demo: anyone at the laptop. No real guests.',

  refused: {
    'not-it': 'That isn’t it. Look again, or ask for a new one.',
    'made-already': 'The house is made. Sign on, or join with a code.',
    'no-house': 'The house isn’t made yet. The laptop’s terminal shows how.',
    'too-short': 'Too short: 8 characters or more.',
    'too-long': 'Too long: 200 characters or fewer.',
    'too-common': 'Many people would try this one first. Take another.',
    'same-passphrase': 'That passphrase is somebody’s here. Take another.',
    'name-taken': 'Somebody has this name already. Add a letter of the family name.',
    'no-name': 'A name is missing.',
    'too-many-tries': 'Too many wrong tries from here. Wait a little.',
    'too-many': 'The house is full: one device or adult has to go first.',
    'last-one': 'Nobody else could do it: add another first.',
    'not-yours': 'This device may not do that.',
    'not-joined': 'This device has to join first.',
    'other-origin': 'Open this page by the server’s own address, then try again.',
    'not-as-asked': 'The server didn’t understand this page. Load it again.',
    'too-large': 'That is too long.',
    failed: 'It wasn’t done. Try again.',
  },
  againIn: (seconds: number) =>
    seconds < 90
      ? `Try again in ${counted(Math.max(1, Math.round(seconds)), 'second', 'seconds')}.`
      : `Try again in ${counted(Math.round(seconds / 60), 'minute', 'minutes')}.`,

  passphrase: {
    name: 'Name, as the crew says it',
    passphrase: 'Passphrase',
    newOne: 'New passphrase',
    show: 'Show',
    hide: 'Hide',
    rules: 'A passphrase here',
    /** `more`: characters that are still missing. */
    long: (more: number) =>
      more > 0 ? `is 8 characters or more: ${more} to go` : 'is 8 characters or more',
    own: 'is nobody else’s here',
    uncommon: 'isn’t one that many people would try first',
    met: 'done',
    unmet: 'not yet',
    hint: 'Three or four words that don’t belong together are easy to say and hard to guess.',
    /** Whether there is such a name isn't said. */
    notIt: 'Name and passphrase don’t belong together. Try again.',
    notInCharge: 'That isn’t the passphrase of anybody in charge. Try again.',
  },

  house: {
    title: 'Make the house',
    what: 'Two people answer for this line. Each has a name and a passphrase.',
    step: (step: number) => `${step} of 2`,
    lead: 'Who leads the line?',
    leadWhat: 'Lets tablets in, and sends them out. This device becomes the lead’s.',
    inCharge: 'Who is the person in charge?',
    inChargeWhat: 'The certified adult. Accepts a caution, and nobody else does.',
    next: 'Next: the person in charge',
    back: 'Back to the lead',
    make: 'Make the house',
    lacksName: 'Name is missing',
    lacksPassphrase: 'Passphrase is missing',
    lacksLonger: 'Passphrase is too short',
    lacksOther: 'Same passphrase as the lead’s',
    made: 'The house is made',
    madeWhat: (lead: string, inCharge: string) =>
      `${lead} leads the line. ${inCharge} is in charge. The door is open for tablets.`,
    toDevices: 'Let tablets in',
    noSecret: 'Open this page by the address that the laptop’s terminal shows',
    noSecretWhat: 'It ends in a secret that works once. A new start of the server shows a new one.',
    already: 'This house is made',
    alreadyWhat: 'Its lead lets tablets in. An adult signs on by name.',
  },

  join: {
    title: 'Let this tablet in',
    what: 'The lead’s screen shows a code, and beside it a picture for the camera.',
    byCode: 'With a code',
    byName: 'I’m an adult of this house',
    nameTitle: 'An adult comes in',
    nameWhat: 'By name and passphrase, as the house knows them.',
    code: 'Code',
    /** One sign of the code, as it is heard. */
    sign: (place: number, sign: string) => `Sign ${place}: ${sign === '' ? 'empty' : sign}`,
    keys: 'Keys of the code',
    takeBack: 'Take one back',
    come: 'Come in',
    lacks: (more: number) => counted(more, 'sign to go', 'signs to go'),
    coming: 'At the door …',
    notIn: 'The door stays shut',
    isIn: (role: PlaceRole, line: string | null) =>
      line === null ? place[role] : `${place[role]} at ${line}`,
    called: (name: string) => `This tablet is called ${name}: the lead’s list says so.`,
    go: (role: PlaceRole) =>
      ({
        'in-charge': 'To the first page',
        lead: 'To Pans',
        counter: 'To the counter',
        assembly: 'To assembly',
        'hand-over': 'To hand-over',
        'pick-up': 'To pick-up',
      })[role],
    inAlready: (role: PlaceRole) =>
      `This tablet is in: ${place[role]}. A new code moves it to another place.`,
    waits: (count: number, role: PlaceRole) =>
      `${orders(count)} of ${place[role]} ${count === 1 ? 'waits' : 'wait'} on this tablet. Only ${place[role]} can send ${count === 1 ? 'it' : 'them'}: ask for its code.`,
    initials: 'Your initials',
    initialsWhat: 'For what you read and record this shift. They stay on this tablet.',
    signOn: 'Sign on',
    signOnWhat: 'On a device of your own: it stays yours until you leave it for a day.',
  },

  /** Names that no food and no tool has, so that two tablets are told apart. */
  names: [
    ...['Otter', 'Heron', 'Lynx', 'Puffin', 'Badger', 'Gecko', 'Marten', 'Osprey'],
    ...['Beaver', 'Falcon', 'Tapir', 'Walrus', 'Kestrel', 'Ferret', 'Magpie', 'Newt'],
    ...['Panda', 'Raven', 'Sloth', 'Toucan', 'Weasel', 'Yak', 'Zebra', 'Ibex'],
  ],

  shut: {
    title: 'This tablet has to join again',
    waits: (count: number) =>
      count === 0
        ? 'Nothing waits here.'
        : `${orders(count)} ${count === 1 ? 'waits' : 'wait'} here and ${count === 1 ? 'is' : 'are'} sent then.`,
    how: (role: PlaceRole) => `Ask the lead for a code of ${place[role]}, under “Devices”.`,
    removed: 'The lead sent this tablet out',
    removedWhat: 'It shows nothing of the service. If that was a mistake, join again.',
    notYours: (role: PlaceRole) => `${place[role]} isn’t this tablet’s`,
    notYoursWhat: 'It was let in for another place. Go there, or ask the lead for a code.',
    stranger: 'This tablet isn’t in',
    strangerWhat: 'The lead’s screen shows a code under “Devices”: it lets this tablet in.',
    demoClosed: 'The demo is closed',
    demoClosedWhat: 'The lead opens it again on the first page.',
    toOwn: (role: PlaceRole) => `To ${place[role]}`,
    join: 'Join with a code',
  },

  devices: {
    title: 'Devices',
    what: 'Tap a place to let a tablet in.',
    none: 'nobody',
    here: 'here',
    away: (at: number, timeZone: string) => `away since ${sayClock(at, timeZone)}`,
    since: (at: number, timeZone: string) => `in since ${sayClock(at, timeZone)}`,
    you: 'this device',
    letIn: (role: PlaceRole) => `Let one in: ${place[role]}`,
    scan: 'Point the tablet’s camera here',
    orType: (address: string) => `or open ${address} there and type`,
    left: (ms: number) => `${minutes(ms)} left · lets one in, once`,
    over: 'This code is over',
    newCode: 'A new code',
    cameIn: (name: string) => `${name} is in`,
    qr: 'Code as a picture for the camera',
    addresses: 'If the tablet can’t find it',
    adultsHere: 'An adult signs on by name on their own device.',
    adults: 'Adults',
    remove: 'Remove',
    removeName: (name: string) => `Remove ${name}`,
    removeSure: (name: string) =>
      `Remove ${name}? Its screen shuts within a second, or once it is back on the network.`,
    removeYes: 'Yes, remove it',
    removeNo: 'Leave it in',
    removed: (name: string) => `${name} is out`,
    close: 'Back',
    attempts: (wrong: number, addresses: number) =>
      `${counted(wrong, 'wrong code or passphrase', 'wrong codes or passphrases')} from ${counted(addresses, 'device', 'devices')} since the start. None let anybody in.`,
    knocks: (refused: number) =>
      `${counted(refused, 'time', 'times')} since the start, a screen that isn’t in was sent away.`,
    notLead: 'Only the lead’s device shows who is in',
    addAdult: 'Another adult',
    addAs: 'As what',
    asLead: 'Lead',
    asInCharge: 'Person in charge',
    proof: 'Passphrase of somebody in charge',
    add: 'Add',
    added: (name: string) => `${name} can sign on`,
    privacy: 'What is remembered',
    ...adultsWords,
  },

  start: {
    yours: (role: PlaceRole, line: string | null) =>
      `This device is in: ${place[role]}${line === null ? '' : ` at ${line}`}.`,
    onlyYours: 'The other places are other tablets’.',
    notIn: 'This device isn’t in. The lead lets it in with a code.',
    notMade: 'Nobody made this house yet: only the demo is open.',
    notMadeHow: 'To serve guests, open the address that the laptop’s terminal shows.',
    notMadeAway: 'This house isn’t made yet. On the laptop, its terminal shows how.',
    demoOnly:
      'Only the demo is open here. If this device was let in before, open the address it was let in by.',
    stations: 'Stations of this house',
    onlyDemo: 'The demo is open: an order can be taken at once, for nobody real.',
    demoAway: 'The demo is open on the laptop itself, for nobody real.',
    setUp: 'Set up your own station',
    setUpHow: 'Your own station is set up here by the lead, once this house is made.',
    isOpen: 'a service is open',
    isShut: 'no service is open',
    toMenu: 'Change what is sold, and the line',
    toOwn: 'To your own station',
    toDemo: 'To the demo',
    openDemo: 'Open the demo beside it',
    closeDemo: 'Close the demo, and forget all of it',
    notDone: 'That wasn’t done. Try again, or ask the lead.',
    shut: 'not this device’s',
    join: 'Join with a code',
    devices: 'Devices',
    devicesWhat: 'Who is in; let a tablet in, or send one out',
    privacy: 'What is remembered',
    privacyWhat: 'Of guests: where, how long, who sees it',
  },
} as const
