/** The stream of a house's larder, in the same log as its services. */

/** No service is called so: theirs begin otherwise. */
const BEGINS = 'larder-'

export const larderStream = (house: string): string => `${BEGINS}${house}`

export const isLarderStream = (stream: string): boolean => stream.startsWith(BEGINS)
