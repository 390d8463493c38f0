/** What a screen says of its connection. */
const age = (seconds: number): string =>
  seconds < 60
    ? `${seconds} s`
    : `${Math.floor(seconds / 60)}:${String(seconds % 60).padStart(2, '0')} min`

export const live = {
  invented: 'Invented demo data: not for real guests',
  connecting: 'Connecting …',
  notOpen: 'The service isn’t open yet',
  closed: 'This service is closed',
  toFirstPage: 'To the first page',
  isLive: 'Live',
  isLost: 'No connection',
  heard: (seconds: number) => `heard ${age(seconds)} ago`,
  pending: (count: number) => `${count} waiting to send`,
  tooOld: 'This screen doesn’t match the server. Reload the page.',
} as const
