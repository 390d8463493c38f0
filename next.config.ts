import { hostname, networkInterfaces } from 'node:os'
import type { NextConfig } from 'next'

const addresses = Object.values(networkInterfaces()).flatMap((list = []) =>
  list.map(({ address }) => address),
)
const build = process.env.LEVEL_SCOOP_BUILD ?? 'development'

const config: NextConfig = {
  reactStrictMode: true,
  poweredByHeader: false,
  devIndicators: false,
  allowedDevOrigins: ['station.test', hostname(), `${hostname()}.local`, ...addresses],
  // Types are checked by `npm run types`, tests and all, without holding up a start.
  typescript: { ignoreBuildErrors: true },
  turbopack: {
    root: import.meta.dirname,
    // The first load of a tablet carries no transport that is never asked for.
    resolveAlias: {
      './polling-xhr.node.js': './components/live/no-transport.mjs',
      './polling-fetch.js': './components/live/no-transport.mjs',
      './webtransport.js': './components/live/no-transport.mjs',
    },
  },
  generateBuildId: () => build,
  // Told at the handshake; an old page on a tablet loads anew when it differs from the server's.
  env: { NEXT_PUBLIC_BUILD: build },
}

export default config
