/** The person in charge: signing on and off by passphrase, on the first page and on Pans. */
export const inChargeWords = {
  title: 'Person in charge',
  what: 'An adult, certified as local code asks, who is there during the service. Local code decides who may.',
  without: 'While no one is signed on, the counter takes no order that is to be kept apart.',
  finding: 'Looking …',
  unknown: 'The server doesn’t answer: this can’t be told now.',

  notSet: 'Nobody has set this station up yet.',
  setHere: 'Where it was started, an address with a code is shown: an adult opens it, once.',

  passphrase: 'Passphrase',
  show: 'Show',
  hide: 'Hide',
  on: (since: string) => `Signed on since ${since}`,
  off: 'No one is signed on',
  noService: 'Sign on once a service is open.',
  signOn: 'Sign on',
  signOff: 'Sign off',
  signOffSure: 'Yes, sign off',
  signOffWhy: 'After that nothing that is to be kept apart is taken.',
  signedOn: 'The person in charge is signed on',
  signedOff: 'The person in charge is signed off',
} as const
