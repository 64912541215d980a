"""The walk from a job folder to a plan."""
