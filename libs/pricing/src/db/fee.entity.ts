import { Column, Entity, PrimaryColumn } from 'typeorm';
import type { Reason } from '#lib/dentition';

@Entity('fees')
export class FeeEntity {
  @PrimaryColumn('uuid')
  id: string;

  @Column('uuid', { name: 'practice_id' })
  practiceId: string;

  @Column('text')
  code: string;

  @Column('text')
  name: string;

  @Column('text', { name: 'fee_class', nullable: true })
  feeClass: string | null;

  @Column('uuid', { name: 'template_id', nullable: true })
  templateId: string | null;

  @Column('text', { nullable: true })
  reason: Reason | null;

  @Column('boolean')
  active: boolean;
}
