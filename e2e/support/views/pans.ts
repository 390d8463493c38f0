import { on, type View } from './view.ts'

const pans = on('/pans', 'pans')

/** With where, probe and initials, so that what is typed can be sent. */
const initialed = (view: View): View => ({
  ...view,
  reach: async (page) => {
    await view.reach?.(page)
    await page.getByRole('button', { name: /^(Middle, stirred|Thickest piece)$/ }).click()
    await page.getByLabel('Probe', { exact: true }).fill('1')
    const held = page.getByLabel('Held, seconds', { exact: true })
    if (await held.count()) await held.fill('15')
    await page.getByLabel('Initials', { exact: true }).fill('AB')
  },
})

/** With a probe that was in other food, into what is kept apart. */
const probed = (view: View): View => ({
  ...view,
  reach: async (page) => {
    await view.reach?.(page)
    await page.getByRole('button', { name: 'Middle, stirred' }).click()
    await page.getByLabel('Probe', { exact: true }).fill('probe 1')
    await page.getByRole('button', { name: 'No', exact: true }).click()
    await page.getByLabel('Initials', { exact: true }).fill('AB')
  },
})

/** A strip has no probe, and nothing that it is read in the middle of. */
const ofStrip = (view: View): View => ({
  ...view,
  reach: async (page) => {
    await view.reach?.(page)
    await page.getByLabel('Initials', { exact: true }).fill('AB')
  },
})

/** Opened yesterday, with a use-by, and frozen. */
const withDates = (view: View): View => ({
  ...view,
  reach: async (page) => {
    await view.reach?.(page)
    await page.getByRole('button', { name: 'Yesterday' }).click()
    await page.getByLabel('Was it frozen?').check()
  },
})

/** To the first hot pan: past the pita and what is behind it. */
const CLOSES = ['Close the service', /^Say what each/, /^Leave it/, /^Leave it/] as const

const DATES = [/^Out of the pack/, /^Opened on/]
const TYPE_165 = [/^1$/, /^6$/, /^5$/]

export const pansViews: readonly View[] = [
  pans('calm', 'quiet', 'Can still sell'),
  // A label that an earlier scene of the house changed comes before what is sold out.
  pans('rush', 'rush', 'make more', [], {
    main: [/^(Make more of it|Change the pan)/],
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
  pans('load', 'unloaded', 'Out of the pack', [/^Pita:/, /^Load the pan/], {
    main: [/^Load the pan/],
  }),
  initialed(
    pans('top up', 'quiet', 'Top it up', [/^Roast peppers:/, /^Top up/, ...TYPE_165], {
      main: [/^Top it up/],
    }),
  ),
  initialed(
    pans('read', 'quiet', 'Record 165 °F', [/^Herb chicken:/, /^Read the temp/, ...TYPE_165], {
      main: [/^Record /],
    }),
  ),
  pans('a round', 'quiet', /^Read 1 of/, ['Take readings']),
  pans('a round, not this pan', 'quiet', 'Later in this round', ['Take readings', 'Not this pan']),
  pans('did you mean', 'quiet', 'Did you mean', [/^Herb chicken:/, /^Read the temp/, /^6$/, /^5$/]),
  pans('weigh', 'quiet', 'That is the weight', [/^Herb chicken:/, 'Weigh it', /^5$/], {
    main: [/^That is the weight/],
  }),
  pans('count', 'rush', 'It really holds', [/^Cheddar:/, 'Correct the count', '1 fewer'], {
    main: [/^The count is/],
  }),
  pans('waste', 'quiet', 'Staff meal', [/^Herb chicken:/, 'Spill or waste', 'Spilled'], {
    main: [/^Record 1 portion/],
  }),
  pans('keep', 'quiet', 'Save 4', [/^Tuna salad:/, 'Save some', /^Harbor tuna$/], {
    main: [/^Save 4/],
  }),
  pans('scoop missing, nothing chosen', 'quiet', 'Tap what is used', [
    /^Herb chicken:/,
    /^The scoop is/,
  ]),
  pans(
    'scoop missing',
    'quiet',
    'Use it from now on',
    [/^Herb chicken:/, /^The scoop is/, /#16 spare/],
    {
      main: [/^Use it from/],
    },
  ),
  pans('scoop missing, far off', 'quiet', 'until its own scoop is back', [
    /^Cheddar:/,
    /^The scoop is/,
    /#30 spare/,
  ]),
  pans('scoop back', 'off-sale', 'Its own scoop is back', [/^Herb chicken:/, /^The scoop is/], {
    main: [/^Its own scoop/],
  }),
  initialed(
    pans(
      'time only',
      'quiet',
      'Start: throw out at',
      [/^Black beans:/, /^Start a 4-hour clock/, /^Heat$/, 'Just now', ...TYPE_165],
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
  pans('close, each pan', 'quiet', 'your house settings don’t allow it', [...CLOSES]),
  ofStrip(
    pans(
      'close, all hot',
      'quiet',
      'Throw out all that is hot',
      [...CLOSES, /^Throw out all hot/],
      {
        main: [/^Throw out all that is hot/],
      },
    ),
  ),
  pans('close, by weight', 'quiet', '– lb', [...CLOSES, /^Weigh$/]),
  pans('close, cooled', 'quiet', 'Somebody is there to read it until', [...CLOSES, /^Cool it/]),
  pans('unloaded', 'unloaded', 'Load 10 pans', [], { main: [/^Load the line/] }),
  pans('the line set up, nothing ready', 'unloaded', 'No batch of it is finished.', [
    /^Load the line/,
    /^Brown rice:/,
  ]),
  initialed(
    pans(
      'the line set up',
      'partly ready to load',
      /Read the pan now/,
      [/^Load the line/, /^1$/, /^5$/, /^1$/],
      { main: [/^Next: herb chicken/] },
    ),
  ),
  initialed(
    pans('the line set up, two packs', 'partly ready to load', 'Second pack opened', [
      /^Load the line/,
      /^Cheddar:/,
      /^Today$/,
      /^A second pack goes in/,
      /^3$/,
      /^7$/,
    ]),
  ),
  pans('the line set up, no batch', 'partly ready to load', /still being made/, [
    /^Load the line/,
    /^Roast peppers:/,
  ]),
  pans('unloaded, no batch', 'unloaded', 'No batch is finished', [/^Brown rice:/, /^Load the pan/]),
  pans('short', 'short', 'Short of herb chicken', [], { main: [/^What can be done/] }),
  pans('short, ways', 'short', 'Newest first', [/^What can be done/], { main: [/^Load the pan/] }),
  pans('hold, no back-up pan', 'no-back-up', 'back-up pan isn’t ready', [], {
    main: [/^Fill the back-up pan/],
  }),
  pans('off sale', 'off-sale', 'The tuna salad pan is out of its limits', [], {
    main: [/^What may be done/],
  }),
  pans('off sale, ways', 'off-sale', 'Only the person in charge decides', [/^What may be done/]),
  pans('found late', 'found-late', 'Guests had herb chicken out of its limits', [], {
    main: [/^Say what was decided/],
  }),
  pans('found late, answer', 'found-late', 'Nothing has to be done', [/^Say what was decided/]),
  pans('dates', 'quiet', 'Maker’s use-by', [/^Cheddar:/, /^Change the pan/, ...DATES]),
  withDates(
    pans('dates, frozen', 'quiet', 'Into the freezer on', [
      /^Cheddar:/,
      /^Change the pan/,
      ...DATES,
    ]),
  ),
  pans('throw out', 'to-throw-out', 'Throw out the sesame slaw pan', [], {
    main: [/^To be thrown out/],
  }),
  pans('throw out, list', 'to-throw-out', 'it was read too warm', [/^To be thrown out/]),
  pans('batches', 'batches', 'Start a batch'),
  pans('start a batch', 'quiet', 'How many loads?', ['Start a batch'], {
    main: [/^Start \d loads?$/],
  }),
  initialed(
    pans(
      'cooked to',
      'batches',
      'Probe the middle',
      [/^Herb chicken ?2 loads/, /^1$/, /^6$/, /^0$/],
      {
        main: [/^Record /],
      },
    ),
  ),
  pans('finished', 'batches', 'It gave', [/^Black beans ?cooked/], { main: [/^Finished: /] }),
  initialed(
    pans(
      'cooling',
      'batches',
      'nobody said to be there after',
      [/^Brown rice ?read by/, /^6$/, /^5$/],
      {
        main: [/^Record /],
      },
    ),
  ),
  initialed(
    pans(
      'reheat',
      'cooled',
      'It left the cold',
      [/^Brown rice ?cooled/, 'Reheat it', ...TYPE_165],
      {
        main: [/^Record /],
      },
    ),
  ),
  pans('nine behind the line', 'nine-behind', 'Can still sell'),
  ofStrip(
    pans(
      'sanitizer, too weak',
      'quiet',
      /^It is too weak/,
      ['The sanitizer', /^1$/, /^0$/, /^Water/, /^7$/, /^5$/],
      { main: [/^Record /] },
    ),
  ),
  pans('behind a pan', 'batches', 'Take it away', [/^Brown rice back-up pan/]),
  pans('fill a back-up pan, no batch', 'unloaded', 'No batch is finished', [
    /^Brown rice back-up pan/,
  ]),
  probed(
    pans('fill a back-up pan', 'no-back-up', 'Washed, rinsed and sanitized since?', [
      /^Sesame slaw back-up pan/,
      /^3$/,
      /^8$/,
    ]),
  ),
  pans('closed', 'closed', 'The service was closed'),
  pans('other scoop', 'quiet', 'Whose scoop was it?', [/^Cheddar:/, 'A wrong scoop went in']),
  pans('person in charge', 'quiet', /No one is signed on|Signed on since/, [/^Person in charge/]),
  pans('labels', 'quiet', 'Which food is it?', ['A label changed'], { long: true }),
  pans('label', 'quiet', 'What happened?', ['A label changed', /^Soy sauce/], {
    main: [/^Not the same/, /^I read/],
  }),
]
