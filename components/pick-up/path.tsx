import type { RefObject } from 'react'
import { BareLine } from '#components/pick-up/bare-line.tsx'
import styles from '#components/pick-up/pick-up.module.css'
import type { Shape } from '#components/pick-up/shape.ts'
import { usePickUpWords } from '#components/pick-up/words.tsx'
import type { PickUpPicture } from '#lib/rooms/shelf/views/pick-up.ts'
import { fitPath, openEm } from '#lib/rooms/shelf/views/pick-up-fit.ts'
import { standingIn, type Tile } from '#lib/rooms/shelf/views/pick-up-places.ts'
import { sayBuild } from '#lib/service/tickets.ts'

const share = (length: number): string => `${(length * 100).toFixed(3)}cqh`

const figuresOf = (tiles: readonly Tile[]): number =>
  Math.max(2, ...tiles.map(({ number }) => number.length))

const namesOf = ({ builds }: Tile): string => builds.map(({ name }) => name).join(' ')

interface PathProps {
  readonly picture: PickUpPicture
  /** Of what is ready, which nothing here is larger than. */
  readonly mostPx: number
  readonly box: RefObject<HTMLDivElement | null>
  readonly shape: Shape
}

/** The floor from where the queue ends to the shelf: numbers that wait, the line, open wraps over it. */
export function Path({ picture, mostPx, box, shape: { aspect, height } }: PathProps) {
  const words = usePickUpWords()
  const waiting = standingIn(picture, 'waiting')
  const making = standingIn(picture, 'making')
  const open = making.tiles.map(({ number }) => openEm(number.length))
  const queued = waiting.tiles.length + (waiting.more > 0 ? 1 : 0)
  const { size, rows, columns, along, places, cell, riding } = fitPath(
    queued,
    figuresOf(waiting.tiles),
    open,
    { aspect, most: mostPx / height },
  )
  return (
    <div
      className={styles.path}
      ref={box}
      style={{
        ['--across' as string]: share(cell[0]),
        ['--down' as string]: share(cell[1]),
        ['--queue' as string]: share(size),
        ['--riding' as string]: share(riding.size),
        ['--rows' as string]: rows,
        ['--along' as string]: along,
        ['--columns' as string]: columns,
      }}
      data-turns={along > 0 || undefined}
    >
      <section className={styles.queue} data-place="waiting" aria-label={words.place.waiting}>
        <ol>
          {waiting.tiles.map((tile, place) => (
            <li
              key={tile.number}
              data-build={namesOf(tile)}
              style={{ gridArea: places[place]?.join(' / ') }}
            >
              {tile.number}
            </li>
          ))}
          {waiting.more > 0 && (
            <li className={styles.more} style={{ gridArea: places.at(-1)?.join(' / ') }}>
              {words.more(waiting.more)}
            </li>
          )}
        </ol>
        <p aria-hidden="true">{words.place.waiting}</p>
      </section>
      <section className={styles.making} data-place="making" aria-label={words.place.making}>
        <ol>
          {making.tiles.map((tile) => (
            <li key={namesOf(tile)} data-build={namesOf(tile)}>
              {sayBuild(namesOf(tile))}
            </li>
          ))}
          {making.more > 0 && <li className={styles.more}>{words.more(making.more)}</li>}
        </ol>
        <BareLine wells={picture.wells} />
        <p aria-hidden="true">{words.place.making}</p>
      </section>
    </div>
  )
}
