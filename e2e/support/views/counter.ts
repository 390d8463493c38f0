import { on, type View } from './view.ts'

const ALLERGENS = [
  ...['Milk', 'Egg', 'Wheat', 'Soy', 'Peanut', 'Tree nuts', 'Fish', 'Sesame'],
  'Crab, shrimp, lobster',
]

const counter = on('/counter', 'counter')
const CHICKEN = /^Garden chicken/
const BEANS = /^Bean and pepper/
const TUNA = /^Harbor tuna/
const SEND = { main: [/^Said. Send/] }
const TURN = { main: [/^Said. Turn/] }
const FOOD = { main: [/^Said. Choose food/] }

export const counterViews: readonly View[] = [
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
  counter('ask, reason only', 'quiet', 'Celiac disease', ['Gluten', /^Reason/], {
    main: [/^Done/],
  }),
  counter(
    'ask, celiac left out only',
    'quiet',
    'Is that what you said?',
    ['Gluten', /^Reason/, 'Celiac disease', /^Leave out only/, /^Done/],
    { main: [/^Yes: only left out/, /^No: keep apart/] },
  ),
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
    'Stop 2-A now',
    [/^Tickets/, /^Allergy told: the guest of 2-A/, 'Egg'],
    {
      main: [/^Stop 2-A now/],
    },
  ),
  counter('name', 'quiet', 'Name to call', ['Asked: none', CHICKEN, 'Add a name']),
  counter('few tickets', 'waiting', '2-A', [/^Tickets/]),
  counter('tickets', 'rush', '7-A', [/^Tickets/], { long: true }),
  counter('cancelling', 'rush', 'Yes, cancel 4-A', [/^Tickets/, 'Cancel 4-A?'], { long: true }),
  counter('gone', 'gone', 'Wanted it, gone', ['Asked: none', BEANS], SEND),
  counter('gone, counted', 'gone', 'counted', ['Asked: none', /^Garden chicken: wanted/]),
  counter('kept', 'kept', 'kept for', ['Asked: none', CHICKEN], SEND),
  counter('short, told', 'short-ways', 'the pans are short'),
  counter('short', 'short-ways', 'Leave out cheddar', [/^Tickets/], {
    main: [/: leave out cheddar$/, /: the guest waits$/],
  }),
  counter('short, changed', 'short-ways', 'Changing 3-A', [/^Tickets/, '3-A: leave out cheddar'], {
    main: [/^Said. Change it/],
  }),
  counter('closed', 'closed', 'This service is closed.'),
]
