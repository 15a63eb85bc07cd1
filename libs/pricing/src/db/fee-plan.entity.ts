import { Column, Entity, PrimaryColumn } from 'typeorm';
import type { FeeCeiling } from '../domain/plan-share.js';

@Entity('fee_plans')
export class FeePlanEntity {
  @PrimaryColumn('uuid')
  id: string;

  @Column('uuid', { name: 'practice_id' })
  practiceId: string;

  @Column('text')
  name: string;

  @Column('boolean', { name: 'in_network' })
  inNetwork: boolean;

  @Column('numeric', { precision: 20, scale: 6 })
  deductible: string;

  @Column('numeric', { name: 'yearly_maximum', precision: 20, scale: 6, nullable: true })
  yearlyMaximum: string | null;

  @Column('text', { name: 'fee_ceiling' })
  feeCeiling: FeeCeiling;

  @Column('text', { name: 'ceiling_source' })
  ceilingSource: string;

  @Column('date', { name: 'ceiling_checked_on' })
  ceilingCheckedOn: string;

  @Column('boolean', { name: 'downgrade_billed' })
  downgradeBilled: boolean;

  @Column('boolean')
  active: boolean;
}
