/** What the Pans screen says before its working part is there, and where no service is open. */
export const pansFrame = {
  title: 'Pans',
  noService: 'No service is open',
  noServiceWhy: 'Open one on the first page. Then the pans are loaded here.',
  closedAt: (clock: string) => `The service was closed at ${clock}`,
  closedWhy: (made: number, handedOver: number) =>
    `${made} made, ${handedOver} handed over. The next one is opened on the first page.`,
  toStart: 'To the first page',
} as const
