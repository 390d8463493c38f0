import { createHash } from 'node:crypto'
import { join } from 'node:path'
import sharp from 'sharp'
import { describe, expect, onTestFinished, test } from 'vitest'
import { UNREAD_LABEL } from '#lib/station/label.ts'
import { createPhotos, MOST_KEPT_BYTES, MOST_PIXELS } from '#server/labels/photos.ts'
import { createSqliteLabels } from '#server/labels/sqlite.ts'
import { closeDurableDatabase } from '#server/store/durable-database.ts'
import { openHouseDatabase } from '#server/store/house-database.ts'
import { temporaryFolder } from '#tests/support/temporary-folder.ts'

const HOUSE = 'house'
const DAY = 86_400_000

const createRoom = (change: Partial<Parameters<typeof createPhotos>[0]> = {}) => {
  const file = openHouseDatabase({ path: join(temporaryFolder(), 'house.db') })
  onTestFinished(() => closeDurableDatabase(file))
  const open = (now: number) => createPhotos({ file, house: HOUSE, now: () => now, ...change })
  return { file, photos: open(1_000), open }
}

/** Noise, which no JPEG makes small. */
const noise = (width: number, height: number) => {
  const raw = { width, height, channels: 3 } as const
  let seed = 7
  const bytes = Buffer.alloc(width * height * 3).map(() => {
    seed = (seed * 1_103_515_245 + 12_345) % 2_147_483_648
    return seed >> 16
  })
  return sharp(bytes, { raw })
}

/** Left half red, the other blue, 300 by 100. */
const halves = () =>
  sharp({ create: { width: 300, height: 100, channels: 3, background: '#0000ff' } }).composite([
    {
      input: { create: { width: 150, height: 100, channels: 3, background: '#ff0000' } },
      left: 0,
      top: 0,
    },
  ])

const kept = async (photos: ReturnType<typeof createPhotos>, bytes: Buffer) => {
  const told = await photos.keep(bytes)
  if ('problem' in told) throw new Error(told.problem)
  const body = photos.find(told.hash)
  if (!body) throw new Error('it is not there')
  return { told, body }
}

describe('a picture of a label', () => {
  test.each(['jpeg', 'png', 'webp'] as const)(
    '[LP1] sent as %s is kept as a JPEG, called by the hash of what is kept',
    async (format) => {
      const { photos } = createRoom()
      const { told, body } = await kept(photos, await halves().toFormat(format).toBuffer())
      expect(told.hash).toBe(createHash('sha256').update(body).digest('hex'))
      expect(await sharp(body).metadata()).toMatchObject({
        format: 'jpeg',
        width: 300,
        height: 100,
      })
      expect(told).toMatchObject({ bytes: body.length, width: 300, height: 100 })
      expect(photos.find('0'.repeat(64))).toBeNull()
    },
  )

  test('[LP2] of several megabytes is at most 300 kB, and no smaller in its pixels than it must', async () => {
    const { photos } = createRoom()
    const large = await noise(2_400, 1_800).jpeg({ quality: 95 }).toBuffer()
    expect(large.length).toBeGreaterThan(4_000_000)
    const { told, body } = await kept(photos, large)
    expect(body.length).toBeLessThanOrEqual(MOST_KEPT_BYTES)
    expect(Math.max(told.width, told.height)).toBeGreaterThanOrEqual(600)
    const plain = await kept(photos, await halves().resize(2_400, 800).jpeg().toBuffer())
    expect([plain.told.width, plain.told.height]).toEqual([2_000, 667])
  }, 60_000)

  test('[LP3] stands upright, and nothing of place, time or camera is in it', async () => {
    const { photos } = createRoom()
    const sideways = await halves()
      .withExif({ IFD0: { Copyright: 'QJXZKV', Make: 'QJXZKV' } })
      .withMetadata({ orientation: 6 })
      .jpeg()
      .toBuffer()
    expect(sideways.includes('Exif')).toBe(true)
    const { told, body } = await kept(photos, sideways)
    expect([told.width, told.height]).toEqual([100, 300])
    const { data } = await sharp(body).raw().toBuffer({ resolveWithObject: true })
    // Turned a quarter clockwise: what was on the left is above.
    expect([data[0], data[2]].map((one) => (one ?? 0) > 200)).toEqual([true, false])
    const found = await sharp(body).metadata()
    expect([found.exif, found.icc, found.xmp, found.orientation]).toEqual(Array(4).fill(undefined))
    expect(body.includes('QJXZKV')).toBe(false)
  })

  test.each([
    ['text', Buffer.from('not a picture at all')],
    [
      'an SVG, which may ask for other files',
      Buffer.from('<svg xmlns="http://www.w3.org/2000/svg"/>'),
    ],
    ['a GIF', Buffer.from('GIF89a and so on')],
    ['nothing', Buffer.alloc(0)],
    ['the beginning of a JPEG', Buffer.from([0xff, 0xd8, 0xff, 0xe0, 0, 16])],
  ])('[LP4] %s is no picture, and nothing is kept', async (_, bytes) => {
    const { photos, file } = createRoom()
    expect(await photos.keep(bytes)).toEqual({ problem: 'not-a-picture' })
    expect(file.prepare('SELECT count(*) FROM photos').pluck().get()).toBe(0)
  })

  test('[LP4] a small file of very many pixels is not opened', async () => {
    const { photos } = createRoom()
    const side = Math.ceil(Math.sqrt(MOST_PIXELS)) + 10
    const background = '#ffffff'
    const bomb = await sharp({ create: { width: side, height: side, channels: 3, background } })
      .png()
      .toBuffer()
    expect(bomb.length).toBeLessThan(500_000)
    expect(await photos.keep(bomb)).toEqual({ problem: 'too-many-pixels' })
  }, 60_000)

  test('[LP5] where nothing opens pictures, or not this kind, that is told', async () => {
    const { photos } = createRoom({ load: async () => null })
    const jpeg = await halves().jpeg().toBuffer()
    expect(await photos.keep(jpeg)).toEqual({ problem: 'no-pictures-here' })
    const heic = Buffer.concat([Buffer.from('\0\0\0\x18ftypheic\0\0\0\0mif1heic', 'latin1')])
    expect(await createRoom().photos.keep(heic)).toEqual({ problem: 'cannot-open' })
  })

  test('[LP7] that another house made is taken as it is; what isn’t its hash, small or pixels only is not', async () => {
    const { body, told } = await kept(createRoom().photos, await halves().jpeg().toBuffer())
    const { photos } = createRoom()
    const hashOf = (bytes: Buffer) => createHash('sha256').update(bytes).digest('hex')
    expect(photos.adopt('0'.repeat(64), body)).toBe(false)
    const camera = await halves()
      .withExif({ IFD0: { Make: 'QJXZKV' } })
      .jpeg()
      .toBuffer()
    const png = await halves().png().toBuffer()
    const large = await noise(900, 900).jpeg({ quality: 100 }).toBuffer()
    expect(large.length).toBeGreaterThan(MOST_KEPT_BYTES)
    for (const other of [camera, png, large, body.subarray(0, 8)])
      expect(photos.adopt(hashOf(other), other)).toBe(false)
    expect(photos.adopt(told.hash, body)).toBe(true)
    expect(photos.find(told.hash)).toEqual(body)
  })

  test('[LP6] that no label names is gone a day later; one that an earlier label names stays', async () => {
    const { photos, open, file } = createRoom()
    const used = await kept(photos, await halves().jpeg().toBuffer())
    const unused = await kept(photos, await halves().negate().jpeg().toBuffer())
    const labels = createSqliteLabels(file, HOUSE)
    const row = { ingredient: 'pita', product: null, same: true, at: 1, adult: null }
    labels.put({ ...row, version: 1, label: { ...UNREAD_LABEL, photo: used.told.hash } })
    labels.put({ ...row, version: 2, label: null })
    expect(open(DAY - 1).find(unused.told.hash)).not.toBeNull()
    const later = open(DAY + 2_000)
    expect(later.find(unused.told.hash)).toBeNull()
    expect(later.find(used.told.hash)).toEqual(used.body)
  })
})
