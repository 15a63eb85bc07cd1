import { Column, CreateDateColumn, Entity, PrimaryColumn } from 'typeorm';

/** Written once and never changed. Decimals are text here, as pg gives them. */
@Entity('template_versions')
export class TemplateVersionEntity {
  @PrimaryColumn('uuid', { name: 'template_id' })
  templateId: string;

  @PrimaryColumn('integer')
  version: number;

  @Column('uuid', { name: 'practice_id' })
  practiceId: string;

  @Column('integer')
  minutes: number;

  @Column('integer', { name: 'assistant_minutes' })
  assistantMinutes: number;

  @Column('numeric', { name: 'layer_thickness_mm' })
  layerThicknessMm: string;

  @Column('text', { nullable: true })
  note: string | null;

  @Column('uuid', { name: 'recorded_by' })
  recordedBy: string;

  @CreateDateColumn({ type: 'timestamptz', name: 'recorded_at' })
  recordedAt: Date;
}
