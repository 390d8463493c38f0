import { hostname, networkInterfaces } from 'node:os'
import type { OwnNames } from '#server/http/allowed.ts'

export interface LanAddress {
  readonly url: string
  readonly address: string
  /** The interface's name, such as "wlan0". */
  readonly network: string
}

/** Of the addresses that are printed, and of pages. @param secure TLS ends in this server */
export const schemeOf = (secure: boolean): 'http' | 'https' => (secure ? 'https' : 'http')

/** This machine's IPv4 addresses on its networks, those of bridges and tunnels last. */
export const lanAddresses = (port: number, secure: boolean): readonly LanAddress[] =>
  Object.entries(networkInterfaces())
    .flatMap(([network, addresses = []]) =>
      addresses
        .filter(({ family, internal }) => family === 'IPv4' && !internal)
        .map(({ address }) => ({
          url: `${schemeOf(secure)}://${address}:${port}/`,
          address,
          network,
        })),
    )
    .sort((one, other) => rank(one) - rank(other))

const rank = ({ address, network }: { address: string; network: string }): number => {
  const madeUp = /^(docker|br-|veth|virbr|vmnet|vboxnet|utun|tun|tap|wg|tailscale|zt)/.test(network)
  return (madeUp ? 2 : 0) + (address.startsWith('169.254.') ? 1 : 0)
}

/** Read anew at each request: a laptop's address changes with its network. */
export const ownNames = (extra: readonly string[]): OwnNames => ({
  interfaces: Object.values(networkInterfaces()).flatMap((addresses = []) =>
    addresses.map(({ address }) => address.replace(/%.*$/, '')),
  ),
  hostname: hostname(),
  extra,
})
