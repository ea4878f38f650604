/** Money as it is shown. The engine reads and adds; here are the words. */
import { AND, MONEY_PROBLEMS } from "./first-words.js";

/** @import { EngineModule, Money } from "../data/engine-types.d.ts" */

const writers = new Map();

/** What writes amounts of a currency: to make one takes longer than to use it a hundred times. */
function writerOf(currency, minimumFractionDigits) {
  const key = `${currency} ${minimumFractionDigits}`;
  if (!writers.has(key))
    writers.set(
      key,
      new Intl.NumberFormat("en-GB", { style: "currency", currency, minimumFractionDigits }),
    );
  return writers.get(key);
}

/**
 * An amount for the screen: £4.50, and old money as it was typed beside it.
 * @param {EngineModule} engine
 * @param {Money | null} money
 * @returns {string}
 */
export function moneyText(engine, money) {
  if (!money) return "";
  const { currency, digits, whole, part, old } = engine.money_parts(money);
  const amount = whole + part / 10 ** digits;
  const text = writerOf(currency, part === 0 ? 0 : digits).format(amount);
  const typed = money.typed ?? "";
  return old && /[/dsg]|[a-z]n/i.test(typed.replace(/gbp|pounds?|£/gi, ""))
    ? `${text} (${typed.trim()})`
    : text;
}

/**
 * A list of sums, one for each currency.
 * @param {EngineModule} engine
 * @param {Array<Money | null>} amounts
 * @returns {string}
 */
export function totalText(engine, amounts) {
  const sums = engine.totals(amounts.filter(Boolean));
  return sums.map((sum) => moneyText(engine, sum)).join(AND);
}

/** What is wrong with a typed amount, in a sentence. */
export function moneyProblem(problem) {
  return MONEY_PROBLEMS[problem];
}
