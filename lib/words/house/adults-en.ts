/** Changing a passphrase, taking an adult out, signing a device off. */
import { counted } from '#lib/words/counted-en.ts'

export const adultsWords = {
  signedOnAt: (devices: number) =>
    devices === 0 ? 'signed on nowhere' : `signed on at ${counted(devices, 'device', 'devices')}`,
  onlyLead: 'the only lead: stays until there is another',
  onlyInCharge: 'nobody else is in charge: stays until somebody is',
  change: 'Change passphrase',
  changeOf: (name: string) => `Change the passphrase of ${name}`,
  changeWhat: (name: string) =>
    `Every other device where ${name} signed on is signed off at once. Codes that are open end.`,
  before: 'Passphrase until now',
  lacksBefore: 'Passphrase until now is missing',
  lacksOther: 'Same as until now',
  changed: (name: string) => `${name} has a new passphrase`,
  takeOut: 'Take out',
  takeOutOf: (name: string) => `Take ${name} out`,
  takeOutSure: (name: string, devices: number) =>
    devices === 0
      ? `${name} can’t sign on any more.`
      : `${name} can’t sign on any more, and ${counted(devices, 'device shuts', 'devices shut')} within a second.`,
  lacksProof: 'Passphrase is missing',
  signOff: 'Sign off',
  signOffSure: 'Sign this device off? It shows nothing until it is let in again.',
  signOffWaits: (count: number) =>
    `${counted(count, 'order', 'orders')} ${count === 1 ? 'waits' : 'wait'} here and ${count === 1 ? 'is' : 'are'} sent only then.`,
  signOffYes: 'Yes, sign it off',
} as const
