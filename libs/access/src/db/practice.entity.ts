import { Column, Entity, PrimaryColumn } from 'typeorm';
import type { CostShareKey } from '#lib/platform';

@Entity('practices')
export class PracticeEntity {
  @PrimaryColumn('uuid')
  id: string;

  @Column('text')
  name: string;

  @Column('text', { name: 'time_zone' })
  timeZone: string;

  @Column({ type: 'char', length: 3, update: false })
  currency: string;

  @Column('text', { name: 'tooth_notation' })
  toothNotation: 'iso' | 'universal';

  @Column('text', { name: 'cost_share_key' })
  costShareKey: CostShareKey;

  @Column('integer', { name: 'expiry_warning_days' })
  expiryWarningDays: number;
}
