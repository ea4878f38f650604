/** A store read a page at a time: between two of them the screen can take a tap. */
const MOST = 200;

/**
 * What is stored after a key, in its order: `act` gets a page of it after the other. Within a
 * transaction.
 */
export async function inPages(there, store, key, act) {
  for (let [at, more] = [key, true]; more;) {
    const page = await there.after(store, at, MOST);
    act(page.values);
    ({ last: at, more } = page);
  }
}
