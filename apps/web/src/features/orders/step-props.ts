import type { Order } from './api/get-order.js';

/** What every form of a step needs. */
export interface StepProps {
  readonly order: Order;
  readonly onClose: () => void;
}
