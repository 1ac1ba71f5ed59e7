/** A map that forgets everything once it is full, so that a sheet of many different names cannot eat the memory. */
export class BoundedMap<K, V> {
  private readonly entries = new Map<K, V>();

  constructor(private readonly limit: number) {}

  get(key: K): V | undefined {
    return this.entries.get(key);
  }

  set(key: K, value: V): void {
    if (this.entries.size >= this.limit) this.entries.clear();
    this.entries.set(key, value);
  }
}
