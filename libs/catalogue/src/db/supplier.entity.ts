import { Column, Entity, PrimaryColumn } from 'typeorm';

@Entity('suppliers')
export class SupplierEntity {
  @PrimaryColumn('uuid')
  id: string;

  @Column('uuid', { name: 'practice_id' })
  practiceId: string;

  @Column('text')
  name: string;

  @Column('text', { nullable: true })
  email: string | null;

  @Column('boolean')
  active: boolean;
}
