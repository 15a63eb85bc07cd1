import { type CavityClass, type CavitySize, partOfBox } from '#lib/dentition';
import { multiplyQuantity, type Quantity, quantity } from '#lib/measure';

interface Cavity {
  readonly lengthMm: Quantity;
  readonly widthMm: Quantity;
  readonly depthMm: Quantity;
  /** Undefined: a direct veneer. */
  readonly cavityClass: CavityClass | undefined;
  readonly size: CavitySize;
}

/** The volume of a measured cavity in mm3: the part of its box that the shape of its class fills. */
export function cavityVolume(cavity: Cavity): Quantity {
  const { lengthMm, widthMm, depthMm, cavityClass, size } = cavity;
  const part = quantity(partOfBox(cavityClass, size));
  return [widthMm, depthMm, part].reduce(
    (volume, factor) => multiplyQuantity(volume, factor, 'half-up'),
    lengthMm,
  );
}
