import { Column, Entity, PrimaryColumn } from 'typeorm';
import type { Reason } from '#lib/dentition';
import type { Driver } from '../domain/template.js';

/** Decimals are text here, as pg gives them. */
@Entity('template_lines')
export class TemplateLineEntity {
  @PrimaryColumn('uuid')
  id: string;

  @Column('uuid', { name: 'practice_id' })
  practiceId: string;

  @Column('uuid', { name: 'template_id' })
  templateId: string;

  @Column('integer')
  version: number;

  @Column('integer', { name: 'line_number' })
  lineNumber: number;

  @Column('uuid', { name: 'consumable_id', nullable: true })
  consumableId: string | null;

  @Column('text')
  driver: Driver;

  @Column('numeric')
  placed: string;

  @Column('numeric')
  dispensed: string;

  @Column('boolean', { name: 'every_attempt' })
  everyAttempt: boolean;

  @Column('text', { array: true, nullable: true })
  reasons: Reason[] | null;

  @Column('boolean', { name: 'shares_dose' })
  sharesDose: boolean;

  @Column('boolean')
  anaesthetic: boolean;
}
