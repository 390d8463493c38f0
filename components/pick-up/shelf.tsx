import type { RefObject } from 'react'
import styles from '#components/pick-up/pick-up.module.css'
import { usePickUpWords } from '#components/pick-up/words.tsx'
import type { PickUpBuild } from '#lib/rooms/shelf/views/pick-up.ts'
import { type FittedShelf, fitShelf, MORE_EM, tileEm } from '#lib/rooms/shelf/views/pick-up-fit.ts'
import { partsOf, type Standing, type Tile } from '#lib/rooms/shelf/views/pick-up-places.ts'

function Wrap({ name, state }: PickUpBuild) {
  const words = usePickUpWords()
  const isThere = state === 'made'
  return (
    <span
      className={styles.wrap}
      data-there={isThere || undefined}
      data-build={isThere ? name : undefined}
    >
      {partsOf(name)[1]}
      {!isThere && <span className="visually-hidden">{words.notYet}</span>}
    </span>
  )
}

function Ticket({ number, builds }: Tile) {
  return (
    <>
      <span className={styles.number}>{number}</span>
      {builds.map((build) => (
        <Wrap key={build.name} {...build} />
      ))}
    </>
  )
}

const figuresOf = (tiles: readonly Tile[]): number =>
  Math.max(1, ...tiles.map(({ number }) => number.length))

/** How the shelf's tiles stand in a box `aspect` times as wide as high. */
export const fitTickets = ({ tiles, more }: Standing, aspect: number): FittedShelf => {
  const ems = tiles.map(({ builds }) => tileEm(figuresOf(tiles), builds.length))
  return fitShelf(more > 0 ? [...ems, MORE_EM] : ems, aspect)
}

interface ShelfProps {
  readonly made: Standing
  readonly fitted: FittedShelf
  readonly box: RefObject<HTMLDivElement | null>
}

/** The shelf: a compartment a ticket, on planks; its letters solid when there, dashed until then. */
export function Shelf({ made: { tiles, more }, fitted: { size, compartments }, box }: ShelfProps) {
  const words = usePickUpWords()
  return (
    <section className={styles.shelf} data-place="made" aria-label={words.place.made}>
      <div className={styles.planks} ref={box}>
        <ol
          aria-live="polite"
          style={{
            ['--size' as string]: `${(size * 100).toFixed(3)}cqh`,
            ['--figures' as string]: figuresOf(tiles),
          }}
        >
          {compartments.map(({ tile, em }, place) => {
            const ticket = tile === null ? undefined : tiles[tile]
            const key = ticket?.number ?? `${tile === null ? 'empty' : 'more'} ${place}`
            return (
              <li
                key={key}
                aria-hidden={tile === null || undefined}
                data-ticket={ticket?.number}
                style={{ flex: `${em} 0 ${em}em` }}
              >
                {ticket ? <Ticket {...ticket} /> : tile !== null && words.more(more)}
              </li>
            )
          })}
        </ol>
        {tiles.length === 0 && <p className={styles.none}>{words.none.made}</p>}
      </div>
      <p aria-hidden="true">{words.place.made}</p>
    </section>
  )
}
