/** The papers of a plan, as they are chosen. */
export const papersEn = {
  print: 'Print',
  title: 'Papers of this plan',
  back: 'Back to the plan',
  of: {
    purchase: { name: 'Purchase list', what: 'What to buy, in packs, by where it is stored' },
    prep: { name: 'Prep sheet', what: 'Tasks by class period, with amounts and blanks' },
    pack: { name: 'Pack list', what: 'All that goes to the counter, to tick' },
    setUp: { name: 'Set-up sheet', what: 'Each pan where it goes, with the loads of the plan' },
    readings: { name: 'Readings', what: 'A log by hand, for when no screen is there' },
    labels: { name: 'Labels', what: 'For pans, back-ups, batches, trays and cups' },
    allergens: { name: 'Allergen sheet', what: 'Food by food, in words' },
  },
} as const
