/** What the examples of commands in PROTOCOL.md are made of. The first three are shown by their names. */

export const CHOICE = {
  item: 'harbor-tuna',
  base: 'rice',
  parts: {},
  asked: 'none' as const,
  needs: [],
}

export const NEED = {
  code: 'milk',
  handling: 'leave-out' as const,
  reason: null,
}

export const LABEL = {
  declarations: { milk: 'contains' as const },
  traits: ['dairy' as const],
  claims: {},
  readOn: '2026-11-25',
  readBy: null,
}

const PROBE = { scale: 'F' as const, probe: 'probe 1' }

export const HOT_READING = { tenths: 1655, ...PROBE, where: 'middle-stirred' as const }

export const HEAT_READING = {
  tenths: 1655,
  ...PROBE,
  where: 'thickest-part' as const,
  heldSeconds: 15,
}

export const COLD_READING = { tenths: 390, ...PROBE, where: 'middle-stirred' as const }
