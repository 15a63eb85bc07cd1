import { Column, Entity, PrimaryColumn } from 'typeorm';
import type { StockUnit } from '#lib/measure';
import type { LifeUnit } from '../domain/effective-expiry.js';

/** Decimals are text here, as pg gives them; views and rules parse them. */
@Entity('consumables')
export class ConsumableEntity {
  @PrimaryColumn('uuid')
  id: string;

  @Column('uuid', { name: 'practice_id' })
  practiceId: string;

  @Column('text')
  name: string;

  @Column('text')
  category: string;

  @Column('text', { name: 'stock_unit' })
  stockUnit: StockUnit;

  @Column('text', { nullable: true })
  shade: string | null;

  @Column('text', { nullable: true })
  opacity: string | null;

  @Column('text', { nullable: true })
  viscosity: string | null;

  @Column('text', { nullable: true })
  size: string | null;

  @Column('text', { nullable: true })
  grit: string | null;

  @Column('integer', { name: 'life_after_opening', nullable: true })
  lifeAfterOpening: number | null;

  @Column('text', { name: 'life_after_opening_unit', nullable: true })
  lifeAfterOpeningUnit: LifeUnit | null;

  @Column('numeric', { name: 'reorder_at', nullable: true })
  reorderAt: string | null;

  @Column('numeric', { name: 'reorder_up_to', nullable: true })
  reorderUpTo: string | null;

  @Column('numeric', { name: 'density_g_per_cm3', nullable: true })
  densityGPerCm3: string | null;

  @Column('boolean')
  active: boolean;
}
