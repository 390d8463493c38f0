/** What a passphrase's hash costs where it guards nothing. */
export const CHEAP = { n: 16, r: 1, p: 1 }
