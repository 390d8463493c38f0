import type { IncomingMessage } from 'node:http'
import type { AskedPage } from '#server/access/asked-page.ts'

const STATION = /^[\w-]{1,80}$/

/** Of which house and station a page is that asks: `?demo`, `?station=`; what isn't so is left away. */
export const askedPage = ({ url = '' }: Pick<IncomingMessage, 'url'>): AskedPage => {
  const query = new URLSearchParams(url.replace(/^[^?]*\??/, '').replace(/#.*$/s, ''))
  const station = query.get('station')
  return {
    ...(query.has('demo') ? { house: 'demo' } : {}),
    ...(station !== null && STATION.test(station) ? { station } : {}),
  }
}
