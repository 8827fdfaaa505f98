"""What a photograph says in millimetres: printed tags found, the camera solved from them, and ink followed."""
