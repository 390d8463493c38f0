import { renderUnicodeCompact } from 'uqr'
import { describe, expect, test } from 'vitest'
import { greeting } from '#server/greeting.ts'

const lan = [{ url: 'http://192.168.7.2:4321/', address: '192.168.7.2', network: 'wlan0' }]
const running = {
  version: '0.1.0',
  dataFolder: '/data',
  host: '0.0.0.0',
  port: 4321,
  secure: false,
  lan,
}
const SECRET = 'ACDEFGHJKMNPQRTU'

describe('what the terminal shows', () => {
  test('[D23] while nobody made the house, its secret with the address, and as a QR code', () => {
    const shown = greeting({ ...running, secret: SECRET })
    const house = 'http://192.168.7.2:4321/house#ACDE-FGHJ-KMNP-QRTU'
    expect(shown).toContain(house)
    expect(shown).toContain(renderUnicodeCompact(house))
    const alone = greeting({ ...running, secret: SECRET, lan: [] })
    expect(alone).toContain('http://localhost:4321/house#ACDE-FGHJ-KMNP-QRTU')
    const here = greeting({ ...running, secret: SECRET, host: '127.0.0.1' })
    expect(here).toContain('http://localhost:4321/house#ACDE-FGHJ-KMNP-QRTU')
  })

  test('[D23] once it is made, the addresses and no code', () => {
    const shown = greeting({ ...running, secret: null })
    expect(shown).toContain('http://localhost:4321/')
    expect(shown).toContain('http://192.168.7.2:4321/')
    expect(shown).not.toContain('#')
    expect(shown).not.toContain('█')
  })
})
