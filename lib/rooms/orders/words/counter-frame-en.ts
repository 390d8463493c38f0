/** What the counter says before its working part is there, and where no service is open. */
export const counterFrame = {
  title: 'Counter',
  noService: 'No service is open.',
  noServiceWhat: 'The lead opens one on the first page. Then orders can be taken here.',
  closed: 'This service is closed.',
  closedWhat: 'No more orders are taken. The lead opens the next one on the first page.',
} as const
