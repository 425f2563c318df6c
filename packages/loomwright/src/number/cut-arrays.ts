/** What makes arrays of one kind from a block of memory. */
interface Kind<List> {
  readonly BYTES_PER_ELEMENT: number;
  new (block: ArrayBuffer, from: number, length: number): List;
}

/**
 * Cuts arrays from one block of memory with room for so many numbers. To ask the engine for thirty arrays one by one
 * takes longer than most of what is done in them for a small network.
 */
export function cutter<List>(List: Kind<List>, room: number): (length: number) => List {
  const size = List.BYTES_PER_ELEMENT;
  const block = new ArrayBuffer(size * room);
  let at = 0;
  return (length) => {
    at += length * size;
    return new List(block, at - length * size, length);
  };
}

/** The same numbers with room for as many more. */
export function doubled(list: Int32Array): Int32Array<ArrayBuffer> {
  const larger = new Int32Array(2 * list.length);
  larger.set(list);
  return larger;
}
