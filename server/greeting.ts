import { renderUnicodeCompact } from 'uqr'
import { shownCode } from '#lib/access/code.ts'
import { houseWords as words } from '#lib/words/house/house-en.ts'
import { type LanAddress, schemeOf } from '#server/http/addresses.ts'

/** What the terminal shows once everything answers: while nobody made the house, how to. */
export const greeting = (running: {
  readonly version: string
  readonly dataFolder: string
  readonly host: string
  readonly port: number
  readonly secure: boolean
  readonly lan: readonly LanAddress[]
  /** What makes the house; null once it is made. */
  readonly secret: string | null
}): string => {
  const onlyHere = /^(localhost|127\.|::1$)/.test(running.host)
  const reachable = running.lan.filter(
    ({ address }) => /^(0\.0\.0\.0|::)$/.test(running.host) || address === running.host,
  )
  const lan = onlyHere ? [] : reachable
  const [first] = lan
  const local = /^(0\.0\.0\.0|::1?|127\..*)$/.test(running.host) ? 'localhost' : running.host
  const tablets = lan.map(({ url, network }) => words.tablets(url, network))
  const here = `${schemeOf(running.secure)}://${local}:${running.port}/`
  const house =
    running.secret === null ? null : `${first?.url ?? here}house#${shownCode(running.secret)}`
  return [
    words.running(running.version),
    words.dataFolder(running.dataFolder),
    words.thisMachine(here),
    ...(tablets.length > 0 ? tablets : [onlyHere ? words.onlyHere : words.noNetwork]),
    ...(house === null ? [] : ['', renderUnicodeCompact(house), words.makeHouse(house)]),
    '',
    words.cautions,
  ].join('\n')
}
