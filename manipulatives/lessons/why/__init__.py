"""What a pupil's answered sums may mean, and which sum to give next."""
