package mystery // once is enough
