import type { Page } from '@playwright/test'
import type { Scene } from '#tests/support/scenes.ts'

export interface View {
  /** Unique: which screen, and what stands on it. */
  readonly name: string
  readonly path: string
  readonly scene: Scene
  /** What is tapped to come to it, from a page that was just opened. */
  readonly reach?: (page: Page) => Promise<void>
  /** Text that is on it, and on nothing before it. */
  readonly shows: string | RegExp
  /** Names of the buttons that the view is there for. */
  readonly main?: readonly RegExp[]
  /** It holds a list of any length, which may scroll. */
  readonly long?: true
}

/** Longer than the guard that keeps a press from landing on what has only just come. */
const GUARD_MS = 500
const GUARDED = /I read it aloud|What (can|may) be done|To be thrown out/

const taps =
  (...names: readonly (string | RegExp)[]) =>
  async (page: Page): Promise<void> => {
    for (const name of names) {
      const button = page.getByRole('button', { name }).first()
      await button.waitFor()
      if (GUARDED.test(String(name))) await page.waitForTimeout(GUARD_MS)
      await button.click()
    }
  }

const ALLERGENS = [
  ...['Milk', 'Egg', 'Wheat', 'Soy', 'Peanut', 'Tree nuts', 'Fish', 'Sesame'],
  'Crab, shrimp, lobster',
]

type Names = readonly (string | RegExp)[]

const on =
  (path: string, screen: string) =>
  (
    name: string,
    scene: Scene,
    shows: string | RegExp,
    tapped: Names = [],
    more: Pick<View, 'main' | 'long'> = {},
  ): View => ({
    name: `${screen}, ${name}`,
    path,
    scene,
    shows,
    ...(tapped.length > 0 ? { reach: taps(...tapped) } : {}),
    ...more,
  })

const start = on('/', 'start')
const counter = on('/counter', 'counter')
const assembly = on('/assembly', 'assembly')
const handOver = on('/hand-over', 'hand-over')
const pans = on('/pans', 'pans')
const pickUp = on('/pick-up', 'pick-up')

const CHICKEN = /^Garden chicken/
const BEANS = /^Bean and pepper/
const TUNA = /^Harbor tuna/
const MADE = { main: [/^Made and marked/] }
const SEND = { main: [/^Said. Send/] }
const TURN = { main: [/^Said. Turn/] }
const FOOD = { main: [/^Said. Choose food/] }

/** With initials, so that what is typed can be sent. */
const initialed = (view: View): View => ({
  ...view,
  reach: async (page) => {
    await view.reach?.(page)
    await page.getByLabel('Initials', { exact: true }).fill('AB')
  },
})

const TYPE_165 = [/^1$/, /^6$/, /^5$/]

/** Every screen in the states that it has; no view changes its service. */
export const views: readonly View[] = [
  start('open', 'quiet', 'To the counter'),
  start('closed', 'closed', 'Open a demo service'),

  counter('ask', 'quiet', 'Ask every guest', [], { main: [/^Asked: none/] }),
  counter('ask, one need', 'quiet', 'Said. Choose food', ['Milk'], FOOD),
  counter('ask, every allergen', 'quiet', 'Said. Choose food', [...ALLERGENS, 'Vegan'], FOOD),
  counter(
    'ask, leave out',
    'quiet',
    'Said. Choose food',
    ['Milk', 'Milk: change to leave out only'],
    FOOD,
  ),
  counter('not sure', 'quiet', 'Stop. Call the person in charge.', [/^Not sure/]),
  counter('choose', 'rush', 'Choose what the guest wants.', ['Asked: none']),
  counter('read-back', 'rush', 'Said. Send', ['Asked: none', CHICKEN], SEND),
  counter(
    'read-back, changed',
    'quiet',
    'No cheddar',
    [
      ...['Asked: none', BEANS, /^Cheddar/, /^Yogurt sauce/, /^Sesame slaw/, /^Sesame slaw/],
      ...[/^One more portion of roast/, /^One more portion of black/],
    ],
    SEND,
  ),
  counter('read-back, milk', 'rush', 'Said. Turn', ['Milk', 'Said. Choose food', BEANS], TURN),
  counter(
    'third build',
    'quiet',
    'Remove C',
    [
      ...['Milk', 'Sesame', 'Said. Choose food', BEANS, /^Another/],
      ...['Asked: none', TUNA, /^Another/, 'Asked: none', CHICKEN],
    ],
    { main: [/^Turn to the guest of A/] },
  ),
  counter('ask, one kind', 'quiet', 'All of them', ['Tree nuts', /^One kind/], {
    main: [/^Almond/, /^Done/],
  }),
  counter('ask, more', 'quiet', 'Barley', [/^More/], { main: [/^Done/] }),
  counter(
    'turned',
    'quiet',
    'Please read this',
    ['Milk', 'Said. Choose food', CHICKEN, /^Said. Turn/],
    { main: [/^I agree/] },
  ),
  counter(
    'caution',
    'quiet',
    'read this to the guest',
    ['Milk', 'Said. Choose food', TUNA, /^Call the person/],
    { main: [/^The guest accepts/] },
  ),
  counter(
    'told late',
    'waiting',
    'Stop 2A now',
    [/^Tickets/, /^Allergy told: the guest of 2A/, 'Egg'],
    {
      main: [/^Stop 2A now/],
    },
  ),
  counter('name', 'quiet', 'Name to call', ['Asked: none', CHICKEN, 'Add a name']),
  counter('few tickets', 'waiting', '2A', [/^Tickets/]),
  counter('tickets', 'rush', '7A', [/^Tickets/], { long: true }),
  counter('cancelling', 'rush', 'Yes, cancel 4A', [/^Tickets/, 'Cancel 4A?'], { long: true }),
  counter('gone', 'gone', 'Wanted it, gone', ['Asked: none', BEANS], SEND),
  counter('gone, counted', 'gone', 'counted', ['Asked: none', /^Garden chicken: wanted/]),
  counter('kept', 'kept', 'kept for', ['Asked: none', CHICKEN], SEND),
  counter('short, told', 'short-ways', 'the pans are short'),
  counter('short', 'short-ways', 'Leave out cheddar', [/^Tickets/], {
    main: [/: leave out cheddar$/, /: the guest waits$/],
  }),
  counter('short, changed', 'short-ways', 'Changing 3A', [/^Tickets/, '3A: leave out cheddar'], {
    main: [/^Said. Change it/],
  }),
  counter('closed', 'closed', 'This service is closed.'),

  assembly('idle', 'quiet', 'No builds waiting'),
  assembly('waiting', 'waiting', 'Start 1A', [], { main: [/^Start 1A/] }),
  assembly('making', 'rush', 'Made and marked', [], MADE),
  assembly('making, fullest', 'fullest', 'Made and marked', [], MADE),
  assembly('reading', 'reading', 'I read it aloud', [], { main: [/^I read it aloud/] }),
  assembly('waiting, kept apart', 'reading', 'Start 1A', ['I read it aloud'], {
    main: [/^Start 1A/],
  }),
  assembly('waiting, a label unread', 'unread', 'Start 1A', ['I read it aloud'], {
    main: [/^Start 1A/],
  }),
  assembly('making, kept apart', 'apart', 'Made and marked', [], MADE),
  assembly('making, most kept apart', 'all-apart', 'Made and marked', [], MADE),
  assembly('waiting, leave out', 'diet', 'Start 1A', [], { main: [/^Start 1A/] }),
  assembly('waiting, short', 'short', 'Not enough', [], { main: [/^Make 2A first/] }),
  assembly('stop', 'stopped', 'Was food in 1A?', [], { main: [/^Yes/, /^No/] }),
  assembly('stop, cancelled', 'cancelled', 'Cancelled.', [], { main: [/^Yes/, /^No/] }),
  assembly('take back', 'rush', 'Which one was a mistake?', ['Take back'], {
    main: [/^Take back 2A/, /^Close/],
  }),
  assembly('take back, asked', 'rush', 'Was 3A made?', ['Take back', /^Take back 3A/], {
    main: [/^Yes/, /^No/, /^Close/],
  }),
  assembly('stop, told late', 'told-late', 'Was food in 1A?', [], { main: [/^Yes/, /^No/] }),
  assembly('stop, made', 'to-find', '2A is thrown out', [], { main: [/^2A is thrown out/] }),
  assembly('held', 'held', 'HELD'),
  assembly('soiled', 'soiled', 'another scoop went in', [], MADE),
  assembly('waiting, off sale', 'chicken-off-sale', 'is off sale', [], {
    main: [/^Make 2A first/],
  }),
  assembly('making, off sale', 'chicken-off-sale, making', 'is off sale', [], MADE),
  assembly('making, other scoop', 'other-scoop', 'other scoop', [], MADE),
  assembly('stop, thrown out', 'thrown-out', 'Was food in 1A?', [], { main: [/^Yes/, /^No/] }),
  assembly('wrong scoop', 'rush', 'Which pan did a wrong scoop go into?', ['Wrong scoop'], {
    main: [/^Close/],
  }),
  assembly('wrong scoop, whose', 'rush', 'which scoop went in?', ['Wrong scoop', 'Cheddar'], {
    main: [/^Close/],
  }),
  assembly('closed', 'closed', 'This service is closed'),

  handOver('empty', 'quiet', 'Nothing to hand over'),
  handOver('shelf', 'rush', 'Hand over 2A', [], { main: [/^Hand over 2A/, /^Ask, then/] }),
  handOver('ask', 'rush', 'What did you ask us to leave out?', [/^Ask, then/], {
    main: [/^They answered/],
  }),
  handOver('ask, compared', 'rush', 'KEEP FROM MILK', [/^Ask, then/, /^They answered/], {
    main: [/^Same as the mark/],
  }),
  handOver(
    'ask, differs',
    'rush',
    'Keep it here',
    [/^Ask, then/, /^They answered/, 'Not the same'],
    {
      main: [/^Back to the shelf/],
    },
  ),
  handOver('to find', 'to-find', 'FIND THE GUEST', [], { main: [/^1A is found/, /^I threw 2A/] }),
  handOver('to find, asked', 'to-find', 'did you find the guest', [/^1A is found/], {
    main: [/^Found: food/, /^Found: told/, /^Not found yet/],
  }),
  handOver('to be thrown out', 'past', 'To be thrown out', [], { main: [/^I threw 1A out/] }),
  handOver('wrong', 'rush', '2A: what is wrong?', ['Is something wrong with 2A?'], {
    main: [/^Make it again/],
  }),
  handOver(
    'wrong, sure',
    'rush',
    'Yes, make 2A again',
    ['Is something wrong with 2A?', /^Make it again/],
    { main: [/^Yes, make 2A again/] },
  ),
  handOver('closed', 'closed', 'This service is closed'),

  pans('calm', 'quiet', 'Behind the line'),
  pans('rush', 'rush', 'Toasted almonds is sold out', [], {
    main: [/^Load the pan|^Open the pan/],
  }),
  pans('a pan', 'rush', 'What do you see in it?', [/^Cheddar:/], { main: [/^Change the pan/] }),
  initialed(
    pans(
      'change the pan',
      'quiet',
      'What goes in?',
      [/^Herb chicken:/, /^Change the pan/, ...TYPE_165],
      {
        main: [/^Change the pan/],
      },
    ),
  ),
  pans('load', 'unloaded', 'As it came', [/^Pita:/, /^Load the pan/], {
    main: [/^Load the pan/],
  }),
  initialed(
    pans('top up', 'quiet', 'Top it up', [/^Roast peppers:/, /^Top up/, ...TYPE_165], {
      main: [/^Top it up/],
    }),
  ),
  initialed(
    pans('read', 'quiet', 'Write it down', [/^Herb chicken:/, /^Read the temp/, ...TYPE_165], {
      main: [/^Write it down/],
    }),
  ),
  pans('did you mean', 'quiet', 'Did you mean', [/^Herb chicken:/, /^Read the temp/, /^6$/, /^5$/]),
  pans('weigh', 'quiet', 'That is the weight', [/^Herb chicken:/, 'Weigh it', /^5$/], {
    main: [/^That is the weight/],
  }),
  pans('count', 'rush', 'It really holds', [/^Cheddar:/, 'Correct the count', '1 fewer'], {
    main: [/^The count is/],
  }),
  pans('waste', 'quiet', 'Staff meal', [/^Herb chicken:/, 'Spill or waste'], {
    main: [/portion gone$/],
  }),
  pans('keep', 'quiet', 'Keep 4', [/^Tuna salad:/, 'Keep some', /^Harbor tuna$/], {
    main: [/^Keep 4/],
  }),
  pans('scoop missing', 'quiet', 'Use it from now on', [/^Herb chicken:/, /^The scoop is/], {
    main: [/^Use it from/],
  }),
  pans('scoop back', 'off-sale', 'Its own scoop is back', [/^Herb chicken:/, /^The scoop is/], {
    main: [/^Its own scoop/],
  }),
  initialed(
    pans(
      'time only',
      'quiet',
      'Start: throw out at',
      [/^Black beans:/, /^Time only/, ...TYPE_165],
      {
        main: [/^Start: throw out/],
      },
    ),
  ),
  pans('stop selling', 'rush', 'Stop selling Cheddar?', [/^Cheddar:/, 'Stop selling'], {
    main: [/^Stop selling/],
  }),
  pans('item', 'rush', 'Stop selling Garden chicken?', [/Garden chicken/], {
    main: [/^Stop selling/],
  }),
  pans('close', 'rush', 'can’t be closed yet', ['Close the service']),
  pans('unloaded', 'unloaded', 'Load 10 pans', [], { main: [/^Load pita/] }),
  pans('unloaded, no batch', 'unloaded', 'No batch is finished', [/^Brown rice:/, /^Load the pan/]),
  pans('short', 'short', 'Short of Herb chicken', [], { main: [/^What can be done/] }),
  pans('short, ways', 'short', 'Newest first', [/^What can be done/], { main: [/^Load the pan/] }),
  pans('off sale', 'off-sale', 'Tuna salad is out of its limits', [], {
    main: [/^What may be done/],
  }),
  pans('off sale, ways', 'off-sale', 'Only the person in charge decides', [/^What may be done/]),
  pans('throw out', 'to-throw-out', 'Throw out sesame slaw', [], { main: [/^To be thrown out/] }),
  pans('throw out, list', 'to-throw-out', 'it was read too warm', [/^To be thrown out/]),
  pans('batches', 'batches', '2 loads', []),
  pans('start a batch', 'quiet', 'How many loads?', ['Start a batch'], {
    main: [/^\d loads? started$/],
  }),
  initialed(
    pans(
      'cooked to',
      'batches',
      'Probe the middle',
      [/^Herb chicken ?2 loads/, /^1$/, /^6$/, /^0$/],
      {
        main: [/^Write it down/],
      },
    ),
  ),
  pans('finished', 'batches', 'It gave', [/^Black beans ?cooked/], { main: [/^Finished: /] }),
  initialed(
    pans('cooling', 'batches', 'To 70 °F by', [/^Brown rice ?read by/, /^6$/, /^5$/], {
      main: [/^Write it down/],
    }),
  ),
  initialed(
    pans(
      'reheat',
      'batches',
      'It left the cold',
      [/^Brown rice ?read by/, 'Reheat it', ...TYPE_165],
      {
        main: [/^Write it down/],
      },
    ),
  ),
  pans('behind the line', 'batches', 'Back-up pans', ['Behind the line'], { long: true }),
  pans('fill a back-up pan', 'unloaded', 'No batch is finished', ['Behind the line', 'Fill it']),
  pans('closed', 'closed', 'The service was closed'),
  pans('other scoop', 'quiet', 'Whose scoop was it?', [/^Cheddar:/, 'Another scoop went in']),
  pans('person in charge', 'quiet', /No one is signed on|Signed on since/, [/^Person in charge/]),
  pans('labels', 'quiet', 'Which food is it?', ['A label changed'], { long: true }),
  pans('label', 'quiet', 'What happened?', ['A label changed', /^Soy sauce/], {
    main: [/^Not the same/, /^I read/],
  }),

  pickUp('empty', 'quiet', 'None yet'),
  pickUp('rush', 'rush', '4A'),
  pickUp('closed', 'closed', 'Closed now'),
]

export const view = (name: string): View => {
  const found = views.find((one) => one.name === name)
  if (!found) throw new Error(`no view is called ${name}`)
  return found
}
