/** The product's name and the screens' names, as titles. */
export const titles = {
  product: 'Level Scoop',
  start: 'Level Scoop',
  counter: 'Counter',
  assembly: 'Assembly',
  handOver: 'Hand-over',
  pans: 'Pans',
  pickUp: 'Pick-up',
  sheet: 'Allergen sheet',
  of: (screen: string) => `${screen} · Level Scoop`,
  notFound: 'This page does not exist',
  notFoundHint: 'The address may be mistyped.',
  toStart: 'To the first page',
  failed: 'This page failed',
  failedHint: 'The service goes on. Load the page again; if it fails again, tell the lead.',
  again: 'Load again',
} as const
