/** A day's builds laid flat in the order in which they come, since a day is weighed hundreds of times. */

export interface DrawnDay {
  /** How many builds one of them is: more than one on days beyond what is drawn one by one. */
  readonly each: number
  /** Place of each build's item in the menu. */
  readonly items: Int32Array
  /** Where the components of each build begin, and those of the one after the last. */
  readonly starts: Int32Array
  readonly places: Int32Array
  readonly portions: Int32Array
  readonly baseStarts: Int32Array
  readonly bases: Int32Array
  /** Portions that it wants of each component, by place. */
  readonly wanted: readonly number[]
}

/** What a day is written into, one build after the other. */
export interface Laying {
  readonly add: (place: number, portions: number) => void
  readonly addBase: (place: number) => void
  /** Ends a build of an item, of which all was added. */
  readonly end: (item: number) => void
  /** The day so far; begins the next one. */
  readonly day: (each: number) => DrawnDay
}

/** A row of whole numbers that grows. */
const growing = () => {
  let row = new Int32Array(1_024)
  let count = 0
  return {
    push: (value: number) => {
      if (count === row.length) {
        const longer = new Int32Array(2 * row.length)
        longer.set(row)
        row = longer
      }
      row[count] = value
      count += 1
    },
    length: () => count,
    taken: () => {
      const taken = row.slice(0, count)
      count = 0
      return taken
    },
  }
}

export const laying = (components: number): Laying => {
  const [items, starts, places, portions, baseStarts, bases] = Array.from({ length: 6 }, growing)
  if (!items || !starts || !places || !portions || !baseStarts || !bases)
    throw new Error('six rows are six')
  const begin = () => {
    starts.push(places.length())
    baseStarts.push(bases.length())
  }
  begin()
  return {
    add: (place, count) => {
      places.push(place)
      portions.push(count)
    },
    addBase: (place) => bases.push(place),
    end: (item) => {
      items.push(item)
      begin()
    },
    day: (each) => {
      const wanted: number[] = new Array(components).fill(0)
      const day = {
        each,
        items: items.taken(),
        starts: starts.taken(),
        places: places.taken(),
        portions: portions.taken(),
        baseStarts: baseStarts.taken(),
        bases: bases.taken(),
        wanted,
      }
      for (let k = 0; k < day.places.length; k += 1) {
        const place = day.places[k] ?? 0
        wanted[place] = (wanted[place] ?? 0) + (day.portions[k] ?? 0) * each
      }
      for (let build = 0; build < day.items.length; build += 1) {
        const first = day.baseStarts[build] ?? 0
        if (first === day.baseStarts[build + 1]) continue
        const place = day.bases[first] ?? 0
        wanted[place] = (wanted[place] ?? 0) + each
      }
      begin()
      return day
    },
  }
}
