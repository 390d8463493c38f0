import type { Page } from '@playwright/test'
import { on, type View } from './view.ts'

const ALLERGENS = [
  ...['Milk', 'Egg', 'Wheat', 'Soy', 'Peanut', 'Tree nuts', 'Fish', 'Sesame'],
  'Crab, shrimp, lobster',
]

const counter = on('/counter', 'counter')
const CHICKEN = /^Garden chicken/
const BEANS = /^Bean and pepper/
const TUNA = /^Harbor tuna/
const SEND = { main: [/^I said it: send/] }
const TURN = { main: [/^I said it: turn/] }
const FOUR = ['Milk', 'Tree nuts', 'Sesame', 'Crab, shrimp, lobster']
const FOOD = { main: [/^I said it: choose food/] }

/** Two changes that waited for the connection, as an earlier load of the page left them to tell. */
const waited = async (page: Page): Promise<void> => {
  const needs = page.getByRole('button', { name: 'Milk', exact: true })
  await needs.click()
  const left = () => page.evaluate(() => sessionStorage.getItem('level-scoop/order'))
  while ((await left()) === null) await page.waitForTimeout(20)
  await page.evaluate(() => {
    const kept = JSON.parse(sessionStorage.getItem('level-scoop/order') ?? '{}')
    const of = (ticket: number, items: readonly string[]) => ({
      id: `c-${ticket}`,
      sent: { kind: 'changed', ticket, letter: 'A' },
      items,
    })
    const arrived = [of(2, ['garden-chicken']), of(4, ['garden-chicken', 'harbor-tuna'])]
    // Nothing is kept over these any more: the page is about to be loaded anew.
    const text = JSON.stringify({ ...kept, order: null, arrived })
    addEventListener('pagehide', () => sessionStorage.setItem('level-scoop/order', text))
  })
  await page.reload()
  await page.getByText('4-\u2060A changed').waitFor()
}

const told = (
  name: string,
  tapped: readonly (string | RegExp)[],
  more: Pick<View, 'long'> = {},
): View => {
  const view = counter(name, 'rush', '4-A changed', tapped, more)
  return {
    ...view,
    reach: async (page) => {
      await waited(page)
      await view.reach?.(page)
    },
  }
}

export const counterViews: readonly View[] = [
  counter('ask', 'quiet', 'Ask every guest', [], { main: [/^They said: none/] }),
  counter('ask, one need', 'quiet', 'I said it: choose food', ['Milk'], FOOD),
  counter('ask, four needs', 'quiet', 'I said it: choose food', FOUR, FOOD),
  counter('ask, every allergen', 'quiet', 'I said it: choose food', [...ALLERGENS, 'Vegan'], FOOD),
  counter(
    'read-back, four needs',
    'quiet',
    'I said it: turn',
    ['Milk', 'Egg', 'Fish', 'Tree nuts', 'I said it: choose food', BEANS],
    TURN,
  ),
  counter(
    'ask, leave out',
    'quiet',
    'I said it: choose food',
    ['Milk', 'Milk: change to leave out only'],
    FOOD,
  ),
  counter('not sure', 'quiet', 'Stop. Call the person in charge.', [/^Not sure/]),
  counter('choose', 'rush', 'Choose what the guest wants.', ['They said: none']),
  counter('read-back', 'rush', 'I said it: send', ['They said: none', CHICKEN], SEND),
  counter(
    'read-back, changed',
    'quiet',
    'No cheddar',
    [
      ...['They said: none', BEANS, /^Cheddar/, /^Yogurt sauce/, /^Sesame slaw/, /^Sesame slaw/],
      ...[/^One more portion of roast/, /^One more portion of black/],
    ],
    SEND,
  ),
  counter(
    'read-back, milk',
    'rush',
    'I said it: turn',
    ['Milk', 'I said it: choose food', BEANS],
    TURN,
  ),
  counter(
    'read-back, three builds',
    'quiet',
    'Remove C',
    [
      ...['They said: none', CHICKEN, /^Another/, 'They said: none', BEANS, /^Cheddar/, /^Another/],
      ...['They said: none', TUNA],
    ],
    SEND,
  ),
  counter(
    'third build',
    'quiet',
    'Remove C',
    [
      ...['Milk', 'Sesame', 'I said it: choose food', BEANS, /^Another/],
      ...['They said: none', TUNA, /^Another/, 'They said: none', CHICKEN],
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
    ['Milk', 'I said it: choose food', CHICKEN, /^I said it: turn/],
    { main: [/^I agree/] },
  ),
  counter(
    'caution',
    'quiet',
    'read this to the guest',
    ['Milk', 'I said it: choose food', TUNA, /^Call the person/],
    { main: [/^The guest accepts/] },
  ),
  counter(
    'told late',
    'waiting',
    'Stop 2-A now',
    [/^Tickets/, /^Add an allergy: the guest of 2-A/, 'Egg'],
    {
      main: [/^Stop 2-A now/],
    },
  ),
  counter('name', 'quiet', 'Name to call', ['They said: none', CHICKEN, 'Add a name']),
  counter('few tickets', 'waiting', '2-A', [/^Tickets/]),
  counter('tickets', 'rush', '7-A', [/^Tickets/], { long: true }),
  counter('cancelling', 'rush', 'Yes, cancel 4-A', [/^Tickets/, /^4-A/, 'Cancel 4-A?'], {
    long: true,
    main: [/^Yes, cancel 4-A/, /^Don’t cancel/],
  }),
  counter('gone', 'gone', 'Wanted it', ['They said: none', BEANS], SEND),
  counter('gone, counted', 'gone', 'counted', [
    'They said: none',
    /^Garden chicken: sold out, a guest/,
  ]),
  counter('kept', 'kept', 'saved for', ['They said: none', CHICKEN], SEND),
  counter('short, told', 'short-ways', 'the pans are short'),
  counter('short', 'short-ways', 'Without cheddar and with pita', [/^Tickets/], {
    main: [/: the guest waits$/, /^Add an allergy/],
  }),
  counter('short, without', 'short-ways', 'Without cheddar', [/^Tickets/, /^2-A/], {
    main: [/^2-A: Without cheddar/, /: the guest waits$/],
  }),
  counter('short, changed', 'short-ways', 'Changing 2-A', [/^Tickets/, /^2-A/, /^2-A: Without/], {
    main: [/^I said it: change it/],
  }),
  counter('short, double', 'short-double', 'Single herb chicken', [/^Tickets/], {
    main: [/^2-A: Single herb chicken/, /: the guest waits$/],
  }),
  counter('held ticket', 'told-waiting', 'held', [/^Tickets/]),
  told('ask, waited', []),
  told('read-back, waited', ['They said: none', CHICKEN]),
  told('long read-back, waited', [
    ...['They said: none', BEANS, /^Cheddar/, /^Yogurt sauce/, /^Sesame slaw/, /^Sesame slaw/],
    ...[/^One more portion of roast/, /^One more portion of black/],
  ]),
  told('tickets, waited', [/^Tickets/], { long: true }),
  counter('closed', 'closed', 'This service is closed.'),
]
