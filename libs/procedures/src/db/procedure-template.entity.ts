import { Column, Entity, PrimaryColumn } from 'typeorm';

@Entity('procedure_templates')
export class ProcedureTemplateEntity {
  @PrimaryColumn('uuid')
  id: string;

  @Column('uuid', { name: 'practice_id' })
  practiceId: string;

  @Column('text')
  name: string;

  @Column('boolean')
  active: boolean;

  @Column('integer', { name: 'latest_version' })
  latestVersion: number;
}
