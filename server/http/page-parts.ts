/** What belongs to the screens beside their pages: what was built for them, and the icon. */

const BUILT = /^\/_next\/static\/(?:[\w~-][\w.~-]*\/)*[\w~-][\w.~-]*$/
const ICON = '/icon.svg'

/** @param development live rebuilds have addresses of their own */
export const isPagePart = (path: string, development: boolean): boolean =>
  BUILT.test(path) || path === ICON || (development && /^\/(_next|__next)/.test(path))
