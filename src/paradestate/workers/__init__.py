"""The same question asked many times, side by side: in processes here, or on a cluster."""
