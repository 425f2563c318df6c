// The reader of quantities brings mathjs. It is taken from its own file, not from the room's index, so that it is a
// chunk of its own that a page loads only when somebody types a unit.
export { parseQuantity } from '../../../../packages/worked/src/quantity/parse-quantity';
export { QuantityError } from '../../../../packages/worked/src/quantity/quantity-error';
